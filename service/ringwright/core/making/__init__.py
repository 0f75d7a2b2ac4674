"""How it is made: tools, machining, bars, the cut list, the route card."""
