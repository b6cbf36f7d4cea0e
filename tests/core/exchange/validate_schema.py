"""The schema is itself valid draft-07, and the files named after it are valid under it, by
python3-jsonschema: a second opinion beside the validator that the C++ tests use."""
import json
import sys

import jsonschema

schema_file, *files = sys.argv[1:]
with open(schema_file, encoding="utf-8") as stream:
    schema = json.load(stream)
jsonschema.Draft7Validator.check_schema(schema)
validator = jsonschema.Draft7Validator(schema)
faults = 0
for name in files:
    with open(name, encoding="utf-8") as stream:
        for error in validator.iter_errors(json.load(stream)):
            print(f"{name}: {error.json_path}: {error.message[:300]}")
            faults += 1
sys.exit(1 if faults or not files else 0)
