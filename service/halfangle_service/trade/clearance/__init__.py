"""What stands under the wheel on a tilted plate, and where the least gap is."""
