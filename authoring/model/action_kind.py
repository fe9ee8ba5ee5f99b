"""What an action is: its words, what it takes, and the part of the schema that follows from them."""

from __future__ import annotations

import enum

from msgspec import Struct

from authoring.model.effects import Effect, Reach
from authoring.model.language.checkpoint import CHECKPOINT_KEYS
from authoring.model.language.manner import MANNER
from authoring.model.language.terms import NAME_PATTERN, NAME_WORDING, JsonSchema, group, one_of, whole
from authoring.quantities.units import Dimension


class Kind(enum.Enum):
    """The kinds of things that have a name; the value is how a message calls it."""

    ITEM = "an item"
    FASTENERS = "a fastener group"
    FLUID = "a fluid"
    VALUE = "a value"
    PART = "a part"
    TOOL = "a tool"
    CONSUMABLE = "a consumable"
    CHOICE = "a part choice"
    OPTION = "an option"
    MODIFICATION = "a modification"
    FIGURE = "a figure"
    SECTION = "a section"
    STEP = "a step"
    PROCEDURE = "a procedure"


class Role(Struct, frozen=True):
    """One thing an action takes, under one key.

    `kinds` are the kinds of thing it may name; `dimensions` narrow a value.
    `silent` says that the step's text need not name it.
    """

    meaning: str
    kinds: frozenset[Kind]
    required: bool = False
    dimensions: frozenset[Dimension] = frozenset()
    silent: bool = False


class ActionKind(Struct, frozen=True):
    """One action of the language.

    `name` is filled in from the file's name.
    `words` are the verbs a step's text may use for it, the first being the plain one.
    `says` makes the text of a step that has none; `{what}` and each role's name stand for the things named.
    `effects` are what it changes, none where it leaves everything as it was; `reach` is where the hands must be, at
    what stands in the first of the roles `reached` that is named.
    `torque` marks the action that brings fasteners to their torque, `pours` one that puts a fluid in,
    `lets_out` one that takes a fluid out and leaves waste.
    `counted` marks one that puts up parts whose number it may say; the list of parts counts them.
    `parts_off` marks one that takes a thing from its place or its counterpart, by its release sequence.
    `loosens` marks one that turns fasteners loose, so that those beside them must be told apart.
    `handles` marks one with the thing in the hand, coming off or going on, when one asks whether it is used again.
    `holds` marks one that puts a thing up and keeps it there unsecured, until another thing traps it.
    `keeps` marks one that lays a thing aside, `discards` one that throws it away, `empties` one after which a
    place stays empty on purpose.
    `runs` marks one that sets an engine going, `stops` one after which it stands.
    `details` are further keys, each with its schema, that hold words or a number instead of the names of things;
    `needed` are those that must be there.
    `undoes` names the actions after which this one brings the thing back; the closing count pairs them.
    `ways` is the closed list of ways a checkpoint is met; an action with ways is a checkpoint.
    """

    words: tuple[str, ...]
    says: str
    what: Role
    effects: tuple[Effect, ...]
    reach: Reach
    reached: tuple[str, ...] = ("what",)
    roles: dict[str, Role] = {}
    details: dict[str, JsonSchema] = {}
    needed: tuple[str, ...] = ()
    torque: bool = False
    pours: bool = False
    lets_out: bool = False
    counted: bool = False
    parts_off: bool = False
    loosens: bool = False
    handles: bool = False
    holds: bool = False
    keeps: bool = False
    discards: bool = False
    empties: bool = False
    runs: bool = False
    stops: bool = False
    ways: tuple[str, ...] = ()
    undoes: tuple[str, ...] = ()
    name: str = ""

    @property
    def checkpoint(self) -> bool:
        """Whether the action looks or measures, and so has outcomes."""
        return bool(self.ways)

    def schema(self) -> JsonSchema:
        """Return this action's part of the procedure schema: a name, a list of names, or a group of keys."""
        keys: dict[str, JsonSchema] = {"what": _one_or_more(self.what.meaning)}
        keys |= {key: _one(role.meaning) for key, role in self.roles.items()}
        keys |= self.details
        keys |= {key: {"$ref": f"#/$defs/{key}"} for key in MANNER}
        if self.counted:
            keys["count"] = whole("How many; 1 when left out.")
        if self.checkpoint:
            keys |= CHECKPOINT_KEYS
            if len(self.ways) > 1:
                keys["way"] = one_of(f"How it is met; {self.ways[0]} when left out.", *self.ways)
        required = (*(key for key, role in self.roles.items() if role.required), *self.needed)
        schema = group(self.what.meaning, keys, ("what", *required))
        if self.checkpoint or required:
            return schema
        return schema | {
            "type": ["string", "array", "object"],
            "pattern": self.what_pattern(),
            "x-wording": _SEVERAL_WORDING,
            "items": _one("one of several"),
            "minItems": 1,
            "uniqueItems": True,
        }

    def what_pattern(self) -> str:
        """Return the pattern of the names this action takes: procedures go by number, all else by short name."""
        return _PROCEDURE_OR_NAME if Kind.PROCEDURE in self.what.kinds else NAME_PATTERN


_PROCEDURE_OR_NAME = r"^([A-Z]{1,4}-[0-9]{2,5}|[a-z][a-z0-9]*(-[a-z0-9]+)*)$"

_SEVERAL_WORDING = f"write one name, or a list of names, none twice; {NAME_WORDING}"


def _one(meaning: str) -> JsonSchema:
    return {"type": "string", "pattern": _PROCEDURE_OR_NAME, "x-wording": NAME_WORDING, "description": meaning}


def _one_or_more(meaning: str) -> JsonSchema:
    return {
        "type": ["string", "array"],
        "pattern": _PROCEDURE_OR_NAME,
        "items": _one("one of several"),
        "minItems": 1,
        "uniqueItems": True,
        "x-wording": _SEVERAL_WORDING,
        "description": meaning,
    }
