"""Cutting pieces out of bars. The door of the room: what is outside asks for nothing else.

`plan_cuts` finds what to buy, what to begin and how to cut; `sticks` splits blanks into sticks.
"""

from .plan import STEP_LIMIT, Bar, Cut, Piece, Plan, plan_cuts, sticks

__all__ = ("STEP_LIMIT", "Bar", "Cut", "Piece", "Plan", "plan_cuts", "sticks")
