"""Measured things: the bore, the finished ring, and what the result hangs on."""
