"""Ringwright: piston rings for engines that match no catalogue."""

__version__ = "0.1.0"
