"""More small jobs whose verdicts were found by thinking: those in which it counts which way the job goes.

They are marked as those of single actions are, in the file beside this one.
"""

from __future__ import annotations

CASES_OF_WAYS: dict[str, tuple[str, ...]] = {
    "needs and the last change": (
        """
  - title: Part
    steps:
      - needs: {lever: high}
        do: [clean: box]
      - do: [{set: {what: lever, position: low}}]
      - needs: {lever: high}   #! need-contradicted
        do: [clean: box]
      - leaves: {lever: high}
        do: [clean: box]
      - needs: {lever: high}
        do: [clean: box]
""",
    ),
    "a hold point jumped over on some machines": (
        """
  - title: Part
    steps:
      - do: [{inspect: {what: box, outcomes: [{found: Dry., then: go-on},
          {found: Wet., then: go-to, to: further, when: {brake: [disc]}}]}}]
      - do: [{inspect: {what: box, hold: true, outcomes: [{found: Dry., then: go-on}]}}]   #! hold-bypassed disc
      - id: further
        do: [clean: box]
      - optional: In winter.
        do: [{inspect: {what: box, hold: true, outcomes: [{found: Dry., then: go-on}]}}]
""",
    ),
    "a step that nobody comes to": (
        """
  - title: Part
    steps:
      - do: [{inspect: {what: box, outcomes: [{found: Dry., then: go-to, to: mend},
          {found: Wet., then: stop, when: {brake: [disc]}}]}}]
      - when: {brake: [drum]}   #! never-reached drum
        do: [clean: box]
      - id: mend
        do: [clean: box]
""",
    ),
    "a way back": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - id: again   #! without-effect
        do: [remove: lamp]
      - do: [{inspect: {what: box, outcomes: [{found: Dry., then: go-on},
          {found: Wet., then: go-to, to: again, at-most: 2, else: Ask.}]}}]
      - do: [fit: lamp, close: bonnet]
""",
    ),
    "a stopped job is left as it is": (
        """
  - title: Part
    steps:
      - do: [open: bonnet]
      - do: [{inspect: {what: box, outcomes: [{found: Dry., then: go-on}, {found: Wet., then: stop}]}}]
        noticed: [{found: A crack., then: stop}]
      - do: [close: bonnet]
""",
    ),
    "an optional step and its follower": (
        """
  - title: Part
    steps:
      - id: off
        optional: In winter.
        do: [remove: filter]
      - if-done: ["off"]
        do: [fit: filter]
      - optional: In summer.   #! never-put-back
        do: [remove: filter]
""",
    ),
    "two methods of which one forgets": (
        """
  - title: Part
    steps:
      - do: [remove: cap-bolts]   #! never-put-back
      - either:
          - do: [start: cap-bolts, tighten: cap-bolts]
          - do: [clean: box]
""",
    ),
    "a section done again": (
        """
  - title: Part
    repeat: {times: 2}
    steps:
      - do: [loosen: cap-bolts]   #! never-put-back without-effect
""",
    ),
    "an answer before the question": (
        """
  - title: Part
    steps:
      - when: {paint: [wanted]}   #! option-not-asked
        do: [clean: box]
      - do: [{ask: {what: paint, who: customer}}]
      - when: {paint: [wanted]}
        do: [clean: box]
      - do: [fit: ring]   #! wrong-part-unchecked
      - do: [{measure: {what: ring, outcomes: [{found: Fits., then: go-on}]}}]
      - do: [fit: ring]
""",
    ),
    "the other side": (
        """
  - title: Part
    steps:
      - do: [remove: left-bush]
      - do: [{fit: {what: left-bush, on: right-rod}}]   #! wrong-side
      - do: [remove: right-bush]
      - do: [{fit: {what: right-bush, on: right-rod}}]
""",
    ),
    "another procedure in the place of a step": (
        """
  - title: Part
    steps:
      - do: [carry-out: RW-200]
      - do: [clean: lamp]
      - do: [close: bonnet]
      - do: [carry-out: RW-300]   #! need-contradicted reached-through-cover
      - do: [carry-out: RW-200]   #! never-put-back
""",
        """
leaves: {bonnet: open}
sections:
  - title: Part
    steps:
      - do: [open: bonnet]
""",
        """
needs: {bonnet: open}
sections:
  - title: Part
    steps:
      - do: [clean: lamp]
""",
    ),
    "the prop and the lock": (
        """
  - title: Part
    steps:
      - do: [raise: skip, support: skip]
      - do: [lock: skip]
      - do: [release: skip]
      - do: [release: skip, lower: skip]
      - do: [raise: skip]   #! never-put-back
      - do: [support: skip]   #! never-put-back
      - do: [lock: skip, release: skip]
""",
    ),
}
