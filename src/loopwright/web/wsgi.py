"""The application for a server of one's own: ``granian --interface wsgi loopwright.web.wsgi:application``."""

from django.core.wsgi import get_wsgi_application

from loopwright.web.setup import prepare

__all__ = ["application"]

prepare()
application = get_wsgi_application()
