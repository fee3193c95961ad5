"""Django's settings: one process and one SQLite file at home, PostgreSQL for a guild; no variable is needed.

Reading them changes nothing on the disk. The variables that are read stand in :mod:`loopwright.web.surroundings`
and in ``docs/settings.md``.
"""

from __future__ import annotations

import mimetypes
from importlib.resources import files
from pathlib import Path
from typing import Any

from loopwright.web import surroundings

BASE = Path(__file__).resolve().parent
DATA = surroundings.data_folder()

DEBUG = False
SECRET_KEY = surroundings.secret_key(DATA)
ALLOWED_HOSTS = surroundings.listed("LOOPWRIGHT_ALLOWED_HOSTS", ["localhost", "127.0.0.1", "[::1]"])

# ---------------------------------------------------------------------------------------------- the parts
INSTALLED_APPS = [
    "django.contrib.staticfiles",
    "django_htmx",
    "loopwright.store",
]
MIDDLEWARE = [
    "loopwright.web.policy.ContentPolicy",
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "loopwright.web.policy.UploadLimit",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "loopwright.web.policy.SaysWhatIsWrong",
]
ROOT_URLCONF = "loopwright.web.urls"
WSGI_APPLICATION = "loopwright.web.wsgi.application"
TEMPLATES: list[dict[str, Any]] = [
    {
        "BACKEND": "django.template.backends.jinja2.Jinja2",
        "DIRS": [BASE / "templates", BASE.parent / "documents" / "templates"],
        "OPTIONS": {"environment": "loopwright.web.environment.environment"},
    },
]

# ------------------------------------------------------------------------------------------- the database
DATABASES = {"default": surroundings.database(DATA)}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

# --------------------------------------------------------------------------------------- language and time
LANGUAGE_CODE = "en"
USE_I18N = False
USE_TZ = True
TIME_ZONE = surroundings.time_zone()

# --------------------------------------------------------------------------------------------- protection
X_FRAME_OPTIONS = "DENY"
SECURE_REFERRER_POLICY = "same-origin"
CSRF_COOKIE_SAMESITE = "Lax"
HTTPS = surroundings.yes_or_no("LOOPWRIGHT_HTTPS")
CSRF_COOKIE_SECURE = HTTPS
if HTTPS:
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")

# A season file of 5 MB is the largest that is read, with some room for the form around it.
UPLOAD_LIMIT_BYTES = 5_000_000
DATA_UPLOAD_MAX_MEMORY_SIZE = UPLOAD_LIMIT_BYTES
FILE_UPLOAD_MAX_MEMORY_SIZE = UPLOAD_LIMIT_BYTES

# -------------------------------------------------------------------------------------------- static files
# They are served from the packages they come in, found once at the start: there is nothing to collect.
mimetypes.add_type("text/javascript", ".js")  # some systems say otherwise, and a browser then runs no module
STATIC_URL = "/static/"
STATICFILES_DIRS = [
    BASE / "static",
    ("look", str(BASE.parent / "documents" / "look")),
    ("fonts", str(files("fontpkg_inter") / "files")),
]
STORAGES = {"staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}}
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = False
WHITENOISE_ALLOW_ALL_ORIGINS = False
WHITENOISE_MIMETYPES = {".ttf": "font/ttf"}
WHITENOISE_IMMUTABLE_FILE_TEST = r"^/static/fonts/"

# ------------------------------------------------------------------------------------------------- the log
# What went wrong on our side goes to the terminal with its trace; who asked for what goes nowhere.
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {"plain": {"format": "%(asctime)s %(levelname)s %(name)s: %(message)s"}},
    "handlers": {"terminal": {"class": "logging.StreamHandler", "formatter": "plain"}},
    "loggers": {
        "django": {"handlers": ["terminal"], "level": "ERROR", "propagate": False},
        # Whoever asks under another name is told so; anybody can fill a log with that.
        "django.security.DisallowedHost": {"level": "CRITICAL"},
    },
}
