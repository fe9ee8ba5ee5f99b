"""The ids of every finding this layer can make; each has a page of its own for the author."""

from __future__ import annotations

FILE_TOO_LARGE = "file-too-large"
NOT_UTF8 = "not-utf8"
FORBIDDEN_CHARACTER = "forbidden-character"
YAML_SYNTAX = "yaml-syntax"
YAML_FEATURE = "yaml-feature"
DUPLICATE_KEY = "duplicate-key"
NUMBER_LIMIT = "number-limit"
NESTING_LIMIT = "nesting-limit"
EMPTY_FILE = "empty-file"
UNKNOWN_KEY = "unknown-key"
MISSING_KEY = "missing-key"
WRONG_TYPE = "wrong-type"
WRONG_VALUE = "wrong-value"
UNREADABLE_FILE = "unreadable-file"

RULES: frozenset[str] = frozenset(
    {
        FILE_TOO_LARGE,
        NOT_UTF8,
        FORBIDDEN_CHARACTER,
        YAML_SYNTAX,
        YAML_FEATURE,
        DUPLICATE_KEY,
        NUMBER_LIMIT,
        NESTING_LIMIT,
        EMPTY_FILE,
        UNKNOWN_KEY,
        MISSING_KEY,
        WRONG_TYPE,
        WRONG_VALUE,
        UNREADABLE_FILE,
    }
)
