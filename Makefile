# The two commands: `make site` and `make test`. README.md writes both out for machines without make.

PYTHON ?= python3
VENV   := .venv
ifeq ($(OS),Windows_NT)
BIN    := $(VENV)/Scripts
else
BIN    := $(VENV)/bin
endif
PINS   := generator/requirements
PIP    := $(BIN)/python -m pip --disable-pip-version-check install --quiet

# Material for MkDocs prints a banner about MkDocs 2 on every run; we pin MkDocs 1.
export NO_MKDOCS_2_WARNING = 1

.PHONY: site test check bench bundle light clean
.DEFAULT_GOAL := site

site: $(VENV)/site-installed
	$(BIN)/pencilwood build
	@echo "The handbook is ready. Open $(CURDIR)/site/index.html in a browser."

# pytest comes last, so that its closing line is the last thing printed.
test: $(VENV)/test-installed
	$(BIN)/ruff check --quiet .
	$(BIN)/ruff format --check --quiet .
	$(BIN)/mypy --no-error-summary
	$(BIN)/lint-imports --no-logo
	@$(BIN)/python -m pytest --numprocesses auto

check: $(VENV)/site-installed
	$(BIN)/pencilwood check

# Prints how fast a large vine is planned, beside a general solver; no part of the tests.
bench: $(VENV)/test-installed
	$(BIN)/python tests/benchmarks/plan_speed.py

# Prints what a phone loads for an exercise and how fast it answers; `make test` holds the limits.
light: $(VENV)/test-installed
	@$(BIN)/python -m pytest tests/phone -s

# Needs Node.js 20 or newer; the built script is committed, so building the site needs no Node.
bundle: node_modules/.package-lock.json
	npm run --silent build

clean:
	rm -rf $(VENV) node_modules site .pencilwood-cache

$(VENV)/python-ready:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Pencilwood needs Python 3.11 or newer; this is " + sys.version.split()[0] + ". Name another with: make PYTHON=python3.12")'
	$(PYTHON) -m venv $(VENV)
	@touch $@

$(VENV)/site-installed: $(VENV)/python-ready $(PINS)/site.txt pyproject.toml
	$(PIP) -r $(PINS)/site.txt
	$(PIP) --no-deps --no-build-isolation --editable .
	@touch $@

$(VENV)/test-installed: $(VENV)/site-installed $(PINS)/test.txt
	$(PIP) -r $(PINS)/test.txt
	@touch $@

node_modules/.package-lock.json: package.json package-lock.json
	npm ci --no-audit --no-fund
