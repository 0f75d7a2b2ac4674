"""Ringwright: piston rings for engines that match no catalogue."""

__version__ = "1.0.0"
