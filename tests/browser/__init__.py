"""Tests in a real browser: a package, so that the browser is started once for all of them and ends with them."""
