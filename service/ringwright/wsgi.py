"""The application for a WSGI server: gunicorn ringwright.wsgi:app"""

from .api import create_app, docs

app = create_app()
# Before the server forks: all its workers share what is held, and no caller waits for it.
docs.prepared(app)
