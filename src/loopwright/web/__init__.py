"""The pages: settings, start-up and everything that answers a browser.

* :func:`loopwright.web.setup.prepare`: get the data folder and the database ready; before anything else.
* :mod:`loopwright.web.settings`: Django's settings, sane without any variable.
* :mod:`loopwright.web.wsgi`: the application for a server of one's own.
"""
