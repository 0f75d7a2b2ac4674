"""The pages for people at /docs: the specification rendered, how to begin, problems, limits,
settings, changes. All of it is made from what stands elsewhere, when the service starts."""

from .routes import add_to, prepared

__all__ = ["add_to", "prepared"]
