# Everything that is done to the house by hand or by CI. `make` alone lists it.

PYTHON ?= python3
BIN := .venv/bin
# make run PORT=8123
PORT ?=

.DEFAULT_GOAL := help
.NOTPARALLEL:
.PHONY: help base prepared run demo test lint format types contract check lock bench clean

help:  ## list what can be made
	@awk -F ':.*## ' '/^[a-z]+:.*## / {printf "  make %-9s %s\n", $$1, $$2}' $(MAKEFILE_LIST)

base:
	@$(PYTHON) tools/prepare.py base

prepared:
	@$(PYTHON) tools/prepare.py test

run: base  ## open Loopwright with its demonstration season (PORT=8123 for another port)
	@$(BIN)/loopwright demo
	@$(BIN)/loopwright serve --demo $(if $(PORT),--port $(PORT))

demo: base  ## plan the demonstration season and print it
	@$(BIN)/loopwright demo

# The browser's tests watch frames and seconds, so they run alone.
test: prepared  ## run the tests (ARGS="tests/units -x" for some of them)
ifdef ARGS
	@$(BIN)/python -m pytest $(ARGS)
else
	@$(BIN)/python -m pytest -n auto -m "not browser"
	@$(BIN)/python -m pytest -m browser
endif

lint: prepared  ## check style and format
	@$(BIN)/ruff check .
	@$(BIN)/ruff format --check .

format: prepared  ## put the format right, and what else can be put right without a thought
	@$(BIN)/ruff check --fix .
	@$(BIN)/ruff format .

types: prepared  ## check types
	@$(BIN)/mypy

contract: prepared  ## check which room imports which
	@$(BIN)/lint-imports --no-logo

check: lint types contract test  ## all of the checks

lock: base  ## write constraints.txt anew (UPGRADE=1 takes the newest that pyproject.toml allows)
	@command -v uv >/dev/null || test -x $(BIN)/uv || $(BIN)/python -m pip install -qq uv
	@$(BIN)/python -c 'import tomllib; print(*tomllib.load(open("pyproject.toml", "rb"))["build-system"]["requires"], sep="\n")' \
	    | PATH="$$PATH:$(BIN)" uv pip compile --quiet --universal --python-version 3.11 --all-extras --no-header \
	      --no-annotate $(if $(UPGRADE),--upgrade) --output-file constraints.txt pyproject.toml - > /dev/null

bench: prepared  ## measure speed; never part of the tests
	@$(BIN)/python -m bench

clean:  ## remove the environment, caches and builds; what the program saved stays
	@rm -rf .venv build dist htmlcov .coverage .hypothesis .import_linter_cache .mypy_cache .pytest_cache .ruff_cache
	@find src tests tools -name __pycache__ -type d -prune -exec rm -rf {} +
