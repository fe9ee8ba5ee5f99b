"""What the guide's section "What is proved" lists, typed from its tables and from nothing else."""

from __future__ import annotations

EFFECTS = {
    "remove": ("where", "removed"),
    "disconnect": ("where", "removed"),
    "fit": ("where", "fitted"),
    "seat": ("where", "fitted"),
    "connect": ("where", "fitted"),
    "trial-fit": ("where", "tried"),
    "hold": ("where", "held"),
    "start": ("where", "started"),
    "loosen": ("where", "loose"),
    "tighten": ("where", "tight"),
    "discard": ("where", "discarded"),
    "leave-empty": ("where", "empty"),
    "open": ("lid", "open"),
    "close": ("lid", "closed"),
    "raise": ("height", "raised"),
    "lower": ("height", "lowered"),
    "support": ("support", "supported"),
    "lock": ("lock", "locked"),
    "isolate": ("energy", "isolated"),
    "restore": ("energy", "live"),
    "run": ("motion", "running"),
    "stop": ("motion", "stopped"),
    "drain": ("fluid", "drained"),
    "extract": ("fluid", "drained"),
    "fill": ("fluid", "filled"),
    "fill-to-level": ("fluid", "filled"),
    "top-up": ("fluid", "filled"),
    "bleed": ("air", "bled"),
}
"""What an action makes of the thing it names: the side of it, and its state."""

STATES = {
    "stopped": "motion",
    "running": "motion",
    "isolated": "energy",
    "live": "energy",
    "supported": "support",
    "chocked": "support",
    "free": "support",
    "raised": "height",
    "lowered": "height",
    "open": "lid",
    "closed": "lid",
    "removed": "where",
    "fitted": "where",
    "drained": "fluid",
    "filled": "fluid",
    "without-pressure": "pressure",
}
"""The side of a thing that each word under needs and leaves speaks of; any other word is a position."""

BRINGING = frozenset({"fit", "seat", "connect", "trial-fit", "hold", "start"})
"""The actions that bring a thing to its place."""

REACHING = BRINGING | {
    "align",
    "clean",
    "close",
    "compare",
    "disconnect",
    "ease",
    "heat",
    "inspect",
    "isolate",
    "lock",
    "loosen",
    "mark",
    "measure",
    "open",
    "remove",
    "restore",
    "set",
    "tighten",
}
"""The actions for which hands reach the thing itself."""

REACHING_AT = {"bleed": "at", "fill-to-level": "at", "inspect": "at", "measure": "at", "apply": "to"}
"""The actions for which hands reach the thing under this key instead, where it is given."""

GOING_ON = frozenset({"fit", "seat", "connect", "close"})
"""How a cover goes on."""

BACK = frozenset({"fit", "seat", "connect", "hold", "close", "restore"})
"""How an item that is removed, disconnected or isolated comes back."""

POURING = frozenset({"fill", "fill-to-level", "top-up"})

LEVELLING = frozenset({"fill-to-level", "top-up"})

OFF = frozenset({"removed", "discarded", "empty", "replaced"})
"""Where a thing is that is not on the machine."""

JOINED = frozenset({"connect", "fit", "seat", "hold", "start", "tighten", "restore"})
"""What makes a thing that was disconnected no longer so."""

NOT_BACK = frozenset({"removed", "loose", "started", "tried", "held"})
"""Where a thing is that is not back; a lid that is open is not back either."""

CHECKPOINTS = frozenset({"inspect", "measure", "count", "compare", "prove-dead"})

OTHER_SIDE = {
    "left": "right",
    "right": "left",
    "front": "rear",
    "rear": "front",
    "top": "bottom",
    "bottom": "top",
    "inside": "outside",
    "outside": "inside",
}
