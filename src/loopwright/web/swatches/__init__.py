"""Swatches: what each tells, and a form to count, wash and weigh."""
