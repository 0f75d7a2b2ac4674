"""How a ring bears on a wall, round or not."""
