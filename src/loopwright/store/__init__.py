"""What is kept: seasons in a database, every change to them, and the way back.

* :mod:`loopwright.store.changes`: every user action, one function each.
* :mod:`loopwright.store.kept`: what is there to be read.
* :mod:`loopwright.store.rows`: the one place where a season becomes rows and rows a season.

Django has to be set up first; :func:`loopwright.web.setup.prepare` does that.
"""
