PYTHON ?= python3
UV ?= uv
BIN := .venv/bin

export NO_MKDOCS_2_WARNING := 1

.DEFAULT_GOAL := help
.PHONY: help site serve check test fuzz bench format requirements clean

help: ## Say what there is
	@sed -n 's/^\([a-z]*\):.*## /  make \1\t/p' $(MAKEFILE_LIST) | expand -t 22

site: .venv/site-ready ## Build the site into site/
	$(BIN)/mkdocs build --strict
	@echo "The site is in site/: open site/index.html"

serve: .venv/site-ready ## Show the site at 127.0.0.1:8000 and follow every saved file
	$(BIN)/mkdocs serve

check: .venv/site-ready ## Check the maps and parts under frames/
	$(BIN)/rimbook check $(CHECK)

test: .venv/test-ready ## Lint, check types and run all tests
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/pytest --numprocesses auto --dist loadfile

fuzz: .venv/test-ready ## Put wrong files before the program for SECONDS (60)
	$(BIN)/python -m tests.fuzz --seconds $(or $(SECONDS),60)

bench: .venv/test-ready ## Measure builds, the finder and the bench numbers on generated books
	$(BIN)/python -m tests.speed $(BENCH)
	$(BIN)/python -m tests.speed.finder
	$(BIN)/python -m tests.bench.speed

format: .venv/test-ready ## Format the code and mend what the linter can
	$(BIN)/ruff format .
	$(BIN)/ruff check --fix .

requirements: ## Renew the pinned requirements from pyproject.toml (needs uv)
	$(UV) pip compile $(COMPILE) --group build --output-file requirements.txt
	$(UV) pip compile $(COMPILE) --group build --group dev --constraints requirements.txt --output-file requirements-dev.txt

clean: ## Remove the environment, the site and all caches
	rm -rf .venv site .cache .hypothesis .mypy_cache .pytest_cache .ruff_cache

# No index address is written, so the files work with any mirror.
COMPILE := pyproject.toml --quiet --upgrade --extra site --extra print --universal --python-version 3.11 \
	--generate-hashes --no-emit-index-url --no-annotate --custom-compile-command "make requirements"

INSTALL := $(BIN)/pip install --quiet --disable-pip-version-check

.venv/bin/pip:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "Rimbook needs Python 3.11 or newer: make PYTHON=/path/to/python3.11"; exit 1; }
	$(PYTHON) -m venv .venv

.venv/site-ready: .venv/bin/pip requirements.txt pyproject.toml
	$(INSTALL) --require-hashes --requirement requirements.txt
	$(INSTALL) --no-deps --no-build-isolation --editable .
	@touch $@

.venv/test-ready: .venv/site-ready requirements-dev.txt
	$(INSTALL) --require-hashes --requirement requirements-dev.txt
	@touch $@
