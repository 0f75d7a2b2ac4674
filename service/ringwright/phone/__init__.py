"""The service on the local network so that a phone can keep the app: https with no internet.

A browser keeps an app for use without signal only from a secure address. Where there is neither a
domain name nor a network beyond the shed, this room makes what that takes: an authority of this
machine's own that can vouch for nothing but private addresses and local names (`authority`), the
addresses by which a phone finds the machine (`addresses`), a page that leads a phone through it
(`welcome`), the name on the local network (`announce`), and `python -m ringwright.phone`, which
starts it all. Nothing in the service or the core knows of this room.
"""
