"""The HTTP service: units and strictness at the edge, the core's figures behind it."""

from .app import create_app

__all__ = ["create_app"]
