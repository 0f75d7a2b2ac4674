"""Fitting: the rings at hand put on the piston, run in, laid up and looked at again."""
