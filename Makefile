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
PINNED := $(PIP) --require-hashes

# Material for MkDocs prints a banner about MkDocs 2 on every run; we pin MkDocs 1.
export NO_MKDOCS_2_WARNING = 1

.PHONY: fonts fuzz picture screens site test check bench bench-site kill-test bundle pins light clean
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

# Prints how long a handbook of 1,000 cases takes beside plain MkDocs; takes very long.
bench-site: $(VENV)/test-installed
	$(BIN)/python tests/benchmarks/site_speed.py --cases 1000

# Tries 50,000 changed files on every reader and on what follows; takes long. INPUTS=, SEED=
INPUTS ?= 50000
SEED ?= 1
fuzz: $(VENV)/test-installed
	$(BIN)/python tests/fuzz/long_run.py --inputs $(INPUTS) --seed $(SEED)

# Kills builds at random moments and fills disks; takes long, and is no part of the tests.
kill-test: $(VENV)/test-installed
	$(BIN)/python tests/hard/kill_builds.py

# Takes a picture of every kind of page on every kind of screen into .cache/screens. SCREENS="--only index"
screens: $(VENV)/test-installed
	$(BIN)/pencilwood build
	$(BIN)/python tests/screens/take.py $(SCREENS)

# Takes the picture in README.md anew.
picture: $(VENV)/test-installed
	$(BIN)/pencilwood build
	$(BIN)/python tests/screens/picture.py

# Needs Node.js 20 or newer; the built script is committed, so building the site needs no Node.
bundle: node_modules/.package-lock.json
	npm run --silent build

# Cuts the fonts of pages and papers down to the letters that we need; the result is committed.
fonts: $(VENV)/test-installed node_modules/.package-lock.json
	$(BIN)/python tests/fonts/subset.py

# Tries the continuation of MkDocs 1 in an environment of its own and says how it went; never fails,
# because nothing rests on it yet.
FALLBACK := .cache/fallback-venv
fallback: $(FALLBACK)/installed
	@if $(FALLBACK)/$(notdir $(BIN))/python -m properdocs build --quiet --config-file mkdocs.yml \
	    --site-dir $(CURDIR)/.cache/fallback-site; \
	then echo "ProperDocs builds the handbook: .cache/fallback-site/index.html"; \
	else echo "ProperDocs does not build the handbook any more; MkDocs still does."; fi

$(FALLBACK)/installed: $(PINS)/fallback.txt pyproject.toml
	$(PYTHON) -m venv $(FALLBACK)
	$(FALLBACK)/$(notdir $(BIN))/python -m pip --disable-pip-version-check install --quiet \
	    --require-hashes -r $(PINS)/fallback.txt
	$(FALLBACK)/$(notdir $(BIN))/python -m pip --disable-pip-version-check install --quiet \
	    --no-deps --no-build-isolation --editable .
	@touch $@

# Changes the rules, the score, the plan, the block's sums and the winters to come a little, in a copy,
# and tells which changes no test noticed; no part of the tests. `make mutants MUTANTS=` runs all of them, for days.
MUTANTS  ?= --sample 60
MUTATION := .cache/mutation-venv
mutants: $(MUTATION)/installed
	$(MUTATION)/$(notdir $(BIN))/python tests/mutation/run.py $(MUTANTS)

$(MUTATION)/installed: $(PINS)/mutants.txt
	$(PYTHON) -m venv $(MUTATION)
	$(MUTATION)/$(notdir $(BIN))/python -m pip --disable-pip-version-check install --quiet \
	    --require-hashes -r $(PINS)/mutants.txt
	@touch $@

# What we build with, test with and ship, as CycloneDX; after `make pins`, npm or the theme changed.
supply-list: $(VENV)/test-installed
	$(BIN)/python tests/supply_list.py

# Writes the pins anew with the hash of every file on PyPI, then sees that each pin has a wheel for
# every system and Python that we support. Pins stay as they are unless asked: UPGRADE=--upgrade
# takes the newest of all, UPGRADE="--upgrade-package ruff" of one.
TOOLS   := .cache/tools-venv
UV      := $(TOOLS)/$(notdir $(BIN))/uv
COMPILE := $(UV) pip compile --no-config --quiet --default-index https://pypi.org/simple
UPGRADE ?=

pins: $(TOOLS)/installed
	$(call pin,site,pyproject.toml --extra print)
	$(call pin,test,pyproject.toml --extra print --constraint $(PINS)/site.txt)
	$(call pin,fallback,pyproject.toml --extra print --constraint $(PINS)/site.txt)
	$(call pin,mutants,pyproject.toml --extra print --constraint $(PINS)/test.txt)
	$(call pin,node)
	$(call pin,pins)
	@set -e; for python in 3.11 3.12 3.13; do for system in linux macos windows; do \
	    $(COMPILE) --python-platform $$system --python-version $$python --only-binary :all: \
	        $(PINS)/test.txt >/dev/null || { echo "no wheels for $$system, Python $$python"; exit 1; }; \
	done; done

pin = $(COMPILE) --universal --python-version 3.11 --fork-strategy fewest --generate-hashes \
    --emit-build-options --custom-compile-command "make pins" $(UPGRADE) \
    --output-file $(PINS)/$1.txt $2 $(PINS)/$1.in

$(TOOLS)/installed: $(PINS)/pins.txt
	$(PYTHON) -m venv $(TOOLS)
	$(TOOLS)/$(notdir $(BIN))/python -m pip --disable-pip-version-check install --quiet \
	    --require-hashes -r $(PINS)/pins.txt
	@touch $@

clean:
	rm -rf $(VENV) node_modules site .cache .pencilwood-cache

$(VENV)/python-ready:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Pencilwood needs Python 3.11 or newer; this is " + sys.version.split()[0] + ". Name another with: make PYTHON=python3.12")'
	$(PYTHON) -m venv $(VENV)
	@touch $@

$(VENV)/site-installed: $(VENV)/python-ready $(PINS)/site.txt pyproject.toml
	$(PINNED) -r $(PINS)/site.txt
	$(PIP) --no-deps --no-build-isolation --editable .
	@touch $@

$(VENV)/test-installed: $(VENV)/site-installed $(PINS)/test.txt
	$(PINNED) -r $(PINS)/test.txt
	@touch $@

node_modules/.package-lock.json: package.json package-lock.json
	npm ci --no-audit --no-fund
