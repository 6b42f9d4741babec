"""The examples against the JSON Schemas that editors use, judged by an independent validator."""

import datetime
import json
import tomllib

import jsonschema
import pytest
from conftest import ROOT, SITES, site_of

SITE = json.loads((ROOT / "docs/site.schema.json").read_text())
PARTS = json.loads((ROOT / "docs/parts.schema.json").read_text())


def as_json(value):
    """TOML has days; JSON has text."""
    if isinstance(value, dict):
        return {key: as_json(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_json(item) for item in value]
    if isinstance(value, datetime.date):
        return value.isoformat()
    return value


@pytest.mark.parametrize("name", SITES)
def test_examples_follow_the_schemas(name):
    validator = jsonschema.validators.validator_for(SITE)
    validator.check_schema(SITE)
    validator.check_schema(PARTS)
    validator(SITE).validate(as_json(site_of(name)))
    parts = tomllib.loads((ROOT / "examples" / name / "parts.toml").read_text())
    validator(PARTS).validate(as_json(parts))


def test_an_unknown_key_and_a_bare_number_are_refused():
    site = as_json(site_of("boatyard"))
    site["gate"][0]["clear_openning"] = "20 ft"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(site, SITE)
    site = as_json(site_of("boatyard"))
    site["gate"][0]["clear_opening"] = 20
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(site, SITE)
