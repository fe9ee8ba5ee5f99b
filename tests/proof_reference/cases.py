"""Small jobs whose verdicts were found by thinking, each marked where the fault lies.

`#! rule` stands on the first line of the step, or of the section, that the fault is told at;
a value of the feature `brake` behind it says that it concerns those machines alone.
"""

from __future__ import annotations

EQUIPMENT = """\
equipment: hob
name: Hob site dumper
features:
  brake: {name: brake, tell: Look., values: {drum: drum, disc: disc}}
items:
  box: {name: box}
  engine: {name: engine}
  isolator: {name: isolator}
  skip: {name: skip}
  lever: {name: lever, positions: {high: high range, low: low range}}
  bonnet: {name: bonnet, covers: [lamp, gear, pump]}
  plate: {name: plate, covers: [cap]}
  pump: {name: pump}
  rotor: {name: rotor, part-of: pump}
  tub: {name: tub}
  shaft: {name: shaft, part-of: tub}
  lid: {name: lid, part-of: tub, covers: [shaft]}
  lamp: {name: lamp}
  gear: {name: gear, when: {brake: [drum]}}
  cap: {name: cap}
  filter: {name: filter}
  left-rod: {name: left rod, side: left, twin: right-rod}
  right-rod: {name: right rod, side: right, twin: left-rod}
  left-bush: {name: left bush, side: left, twin: right-bush}
  right-bush: {name: right bush, side: right, twin: left-bush}
fasteners:
  cap-bolts: {name: cap bolts, count: 2, thread: M8, on: cap, tightened: By hand.}
  cap-nuts: {name: cap nuts, count: 2, thread: M8, on: cap, tightened: By hand.}
  stop-screw: {name: stop screw, count: 1, thread: M8, on: plate, tightened: By hand., untouched: It sets the play.}
  drain-plug: {name: drain plug, count: 1, thread: M8, on: box, tightened: By hand., drains: [oil]}
  level-plug:
    {name: level plug, count: 1, thread: M8, on: box, tightened: By hand., fills: [oil], open-while-running: Flow.}
fluids:
  oil: {name: oil, kind: gear oil}
values:
  first-fill: {name: first fill, value: 1.2 L, source: bench-book, at: page 12}
"""

CASES: dict[str, tuple[str, ...]] = {
    "what comes off and stays off": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - when: {brake: [drum]}   #! never-put-back drum
        do: [remove: gear]
      - do: [close: bonnet]   #! covered-over drum
""",
    ),
    "a discarded thing is settled, a new group is not before it is tight": (
        """
  - title: Part
    steps:
      - do: [remove: filter, discard: filter]
      - do: [remove: cap-bolts, discard: cap-bolts]
      - do: [start: cap-bolts]   #! never-put-back
""",
    ),
    "another one in its place": (
        """
  - title: Part
    steps:
      - do: [remove: filter]
      - do: [{fit: {what: new-filter, replaces: filter}}]
      - do: [open: bonnet]
      - do: [remove: rotor, remove: pump]
      - do: [{fit: {what: new-pump, replaces: pump}}]
      - do: [close: bonnet]
""",
    ),
    "what was opened and put on again is back": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - do: [clean: lamp]
      - do: [fit: bonnet]   #! without-effect
""",
    ),
    "a cover over the thing, and over its place": (
        """
  - title: Part
    steps:
      - do: [clean: lamp]   #! reached-through-cover
      - do: [clean: rotor]   #! reached-through-cover
      - do: [open: bonnet]
      - do: [remove: lamp]
      - do: [close: bonnet]   #! covered-over
      - do: [clean: lamp]
      - do: [{hold: {what: lamp, by: grease, until: plate}}, {clean: lamp}]   #! reached-through-cover
""",
    ),
    "the bench is under no cover": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - do: [remove: pump]
      - do: [close: bonnet]   #! covered-over
      - do: [remove: rotor]
      - do: [fit: rotor]
      - do: [open: bonnet]
      - do: [fit: pump]
      - do: [close: bonnet]
""",
    ),
    "tight fasteners hold, plugs and untouched ones do not": (
        """
  - title: Part
    steps:
      - do: [remove: plate]
      - do: [remove: cap-bolts]
      - do: [remove: cap]   #! removed-while-held
      - do: [fit: cap, start: cap-bolts, tighten: cap-bolts]
      - do: [fit: plate]
      - do: [remove: box]
      - do: [fit: box]
""",
    ),
    "tightened before the others are in": (
        """
  - title: Part
    steps:
      - do: [remove: cap-bolts, remove: cap-nuts]
      - do: [tighten: cap-bolts]   #! tightened-unstarted
      - do: [start: cap-bolts]   #! without-effect
      - do: [tighten: cap-bolts]   #! tightened-unstarted
      - do: [start: cap-nuts]
      - do: [tighten: cap-nuts, tighten: cap-bolts]
""",
    ),
    "a plug started by hand is not back": (
        """
  - title: Part
    steps:
      - do: [remove: drain-plug, drain: oil]
      - do: [start: drain-plug]
      - do: [{fill: {what: oil, amount: first-fill}}]   #! filled-while-open
      - do: [tighten: drain-plug]
""",
    ),
    "full until it is drained, and once its level is set": (
        """
  - title: Part
    steps:
      - do: [{fill: {what: oil, amount: first-fill}}]   #! filled-when-full
      - do: [drain: oil]
      - do: [{fill: {what: oil, amount: first-fill}}, {fill: {what: oil, amount: first-fill}}]
      - do: [top-up: oil]
      - do: [{fill: {what: oil, amount: first-fill}}]   #! filled-when-full
""",
    ),
    "running on no oil, and with a plug that may be open": (
        """
  - title: Part
    steps:
      - do: [drain: oil]   #! drained-not-filled
      - do: [run: engine]   #! run-while-open
      - do: [stop: engine]
      - do: [loosen: level-plug]
      - do: [tighten: level-plug]
""",
    ),
    "what says so may be open while it runs": (
        """
  - title: Part
    steps:
      - do: [remove: level-plug]
      - do: [run: engine, top-up: oil, stop: engine]
      - do: [start: level-plug, tighten: level-plug]
""",
    ),
    "the lamp is parted while energy comes back": (
        """
  - title: Part
    steps:
      - do: [isolate: isolator, open: bonnet]
      - do: [disconnect: lamp, remove: lamp]
      - do: [fit: lamp]
      - do: [connect: lamp, close: bonnet]
      - do: [restore: isolator]
      - do: [isolate: isolator, open: bonnet, disconnect: lamp]
      - do: [restore: isolator]   #! restored-while-open
      - do: [connect: lamp, close: bonnet]
""",
    ),
    "tried is not back, held is once it is trapped": (
        """
  - title: Part
    steps:
      - do: [open: bonnet, remove: lamp]
      - do: [trial-fit: lamp]
      - do: [close: bonnet]   #! covered-over
      - do: [open: bonnet, remove: lamp]
      - do: [{hold: {what: lamp, by: grease, until: plate}}]
      - do: [close: bonnet]   #! covered-over
      - do: [remove: plate, fit: plate]
      - do: [open: bonnet, close: bonnet]
""",
    ),
    "a place left empty may be covered, and a seat is a fit": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - do: [remove: lamp, leave-empty: lamp]
      - do: [remove: pump]
      - do: [seat: pump]
      - do: [close: bonnet]
""",
    ),
    "down again, locked, and left running": (
        """
  - title: Part
    steps:
      - do: [raise: skip, lower: skip]
      - do: [lock: skip]   #! never-put-back
      - do: [run: engine, stop: engine]
      - do: [run: engine]   #! never-put-back
      - needs: {engine: stopped}   #! need-contradicted
        do: [clean: box]
""",
    ),
    "out at the plug, and every way to fill": (
        """
  - title: Part
    steps:
      - do: [remove: drain-plug, drain: oil]
      - do: [{fill: {what: oil, amount: first-fill}}]   #! filled-while-open
      - do: [start: drain-plug, tighten: drain-plug]
      - do: [drain: oil]
      - do: [{fill-to-level: {what: oil, at: box}}, {run: engine}, {stop: engine}]
      - do: [drain: oil]
      - do: [top-up: oil, run: engine, stop: engine]
      - do: [extract: oil]   #! drained-not-filled
""",
    ),
    "what the job leaves so": (
        """
leaves: {lamp: removed, oil: drained}
sections:
  - title: Part
    steps:
      - do: [open: bonnet, remove: lamp, drain: oil, close: bonnet]
""",
    ),
    "a cover that came off together with what it covers": (
        """
  - title: Part
    steps:
      - do: [remove: tub]
      - do: [clean: shaft]   #! reached-through-cover
      - do: [open: lid]
      - do: [clean: shaft, close: lid]
      - do: [open: lid, remove: shaft]
      - do: [close: lid]   #! covered-over
      - do: [fit: shaft]   #! reached-through-cover
      - do: [fit: tub]
""",
    ),
}
