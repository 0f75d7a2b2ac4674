"""The application for a WSGI server: gunicorn ringwright.wsgi:app"""

from .api import create_app

app = create_app()
