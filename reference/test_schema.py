"""Sites, parts and prices against the JSON Schemas that editors use, judged by an independent validator."""

import datetime
import json
import tomllib

import jsonschema
import pytest
from conftest import ROOT, SITES, run, site_of

SCHEMAS = ["site.schema.json", "parts.schema.json", "price-book.schema.json"]
READER = ROOT / "crates/site/tests"


@pytest.fixture(scope="session")
def schemas(tmp_path_factory):
    """The schemas, freshly written by the program."""
    folder = tmp_path_factory.mktemp("handbook")
    done = run("handbook", "-o", str(folder))
    assert done.returncode == 0, done.stderr
    return {name: json.loads((folder / name).read_text(encoding="utf-8")) for name in SCHEMAS}


def as_json(value):
    """TOML has days; JSON has text."""
    if isinstance(value, dict):
        return {key: as_json(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_json(item) for item in value]
    if isinstance(value, datetime.date):
        return value.isoformat()
    return value


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_schemas_kept_here_are_those_the_program_writes(schemas, name):
    assert json.loads((ROOT / "docs" / name).read_text(encoding="utf-8")) == schemas[name]
    jsonschema.validators.validator_for(schemas[name]).check_schema(schemas[name])


@pytest.fixture(scope="session")
def validators(schemas):
    """One validator of each schema."""
    return {name: jsonschema.validators.validator_for(schema)(schema) for name, schema in schemas.items()}


@pytest.mark.parametrize("name", SITES)
def test_examples_follow_the_schemas(validators, name):
    validators["site.schema.json"].validate(as_json(site_of(name)))
    parts = tomllib.loads((ROOT / "examples" / name / "parts.toml").read_text(encoding="utf-8"))
    validators["parts.schema.json"].validate(as_json(parts))


@pytest.mark.parametrize(
    "file,schema",
    [("full.toml", SCHEMAS[0]), ("parts.toml", SCHEMAS[1]), ("price-book.toml", SCHEMAS[2])],
)
def test_a_text_that_uses_every_key_is_accepted(validators, file, schema):
    validators[schema].validate(as_json(tomllib.loads((READER / "sites" / file).read_text(encoding="utf-8"))))


SHAPES = """unknown-key missing-key wrong-type not-a-table not-a-list empty-text unknown-word bad-name not-a-count
    not-yes-or-no not-a-position number-without-unit"""


@pytest.mark.parametrize("problem", SHAPES.split())
def test_what_the_reader_refuses_by_shape_the_schema_refuses_too(validators, problem):
    text = (READER / "problems" / f"{problem}.toml").read_text(encoding="utf-8")
    assert not validators["site.schema.json"].is_valid(as_json(tomllib.loads(text)))


def test_a_part_needs_no_gate_and_a_bought_thing_no_kind(validators):
    site = {"site": {"name": "a", "code_basis": "us"}}
    validators["site.schema.json"].validate({**site, "device": [{"id": "b", "part": "c"}]})
    assert not validators["site.schema.json"].is_valid({**site, "device": [{"id": "b"}]})
    assert not validators["parts.schema.json"].is_valid({"device": [{"id": "b", "part": "c"}]})


def tables(value, path=()):
    """Every table in a tree of them, with the way to it."""
    if isinstance(value, dict):
        yield path
        for key, item in value.items():
            yield from tables(item, (*path, key))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from tables(item, (*path, index))


@pytest.mark.parametrize("file,schema", [("site.toml", "site.schema.json"), ("parts.toml", "parts.schema.json")])
def test_an_unknown_key_is_refused_in_every_kind_of_table(validators, file, schema):
    whole = as_json(tomllib.loads((ROOT / "examples/boatyard" / file).read_text(encoding="utf-8")))
    kinds = {tuple(step for step in path if isinstance(step, str)): path for path in tables(whole)}
    assert len(kinds) > 5
    for path in kinds.values():
        place = whole
        for step in path:
            place = place[step]
        place["clear_openning"] = "20 ft"
        assert not validators[schema].is_valid(whole), path
        del place["clear_openning"]
    validators[schema].validate(whole)


def test_a_bare_number_for_a_length_is_refused(validators):
    site = as_json(site_of("boatyard"))
    site["gate"][0]["clear_opening"] = 20
    assert not validators["site.schema.json"].is_valid(site)
