"""A ring, its spring and its forming: from what is asked to every size of it."""
