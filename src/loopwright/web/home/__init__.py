"""The first page: her seasons, and loading one."""
