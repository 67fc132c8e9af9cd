"""A plan as a routing: its operations as a planner's system keeps them."""
