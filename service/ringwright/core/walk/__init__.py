"""The ring as it passes through its operations: states, limits, and the ring that is being made."""
