"""A profile on the comparator: lines through picked points, their angle, and the overlay."""
