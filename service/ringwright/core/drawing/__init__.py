"""Drawings as plain geometry: the same lines for the screen, for paper and for exchange.

Everything is drawn from a Design and its Tooling, so that no picture can disagree with the figures.
A view is built in real millimetres, then laid on a sheet at a scale; entities come out in
millimetres of the sheet, x to the right and y upwards from its lower left corner.
"""
