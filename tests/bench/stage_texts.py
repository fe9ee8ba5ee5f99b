"""What the large library says about each stage of the gear train; `$stage` and `$place` are filled in."""

from __future__ import annotations

from string import Template

STOCK_STAGE = Template("""\
  $stage-ring: {name: sealing ring of the $stage cover, number: FL-R-0$place, one-time: true}
""")

ITEM = Template("""\
  $stage-cover: {name: $stage cover, place: on the side of the gear train, covers: [$stage-gear]}
  $stage-gear: {name: $stage gear, place: behind the $stage cover}
""")

FASTENER = Template("""\
  $stage-bolts:
    name: bolts of the $stage cover
    count: $bolts
    thread: M8 x 1.25
    class: "8.8"
    length: 25 mm
    on: $stage-cover
    torque: {value: 22 ± 2 N·m, source: plate-notes, at: "sheet 7, line $place"}
""")

VALUE = Template("""\
  $stage-play:
    name: play of the $stage gear
    value: 0.12 to 0.25 mm
    source: plate-notes
    at: "sheet 8, line $place"
""")

MESSAGE = Template("""\
  $stage-drop:
    harm: person
    severity: moderate
    likelihood: could
    hazard: The $stage cover is heavy and tips towards you when the last bolt is out.
    consequence: It crushes the fingers that are between it and the chassis rail below.
    avoidance: Keep a hand on the middle of the cover, and keep your fingers off its lower edge.
    sign: crushing
  $stage-chips:
    harm: equipment
    severity: moderate
    likelihood: could
    hazard: Dirt on the edge of the $stage cover falls into the gear train as soon as the cover moves.
    consequence: It is carried between the teeth and scores them within an hour.
    avoidance: Do not touch the teeth with a glove that has held the cover.
  $stage-scratch:
    harm: equipment
    severity: minor
    likelihood: could
    hazard: The face that the $stage cover seals against is softer than any tool.
    consequence: A scratch across it lets oil run out past a new ring.
    avoidance: Do not rest a tool or the foot of the gauge on the sealing face.
""")

COVER_FIGURE = Template("""\
  $stage-outside:
    file: figures/$stage-outside.svg
    title: The $stage cover seen from the side of the loader
    alt: >-
      The $stage cover is round and stands on the side of the gear train.
      Its bolts stand on a circle near the edge, evenly apart, the first of them at the top.
      The lower edge of the cover comes close to the chassis rail, with a gap just wide enough for a socket.
      Behind the cover a pipe runs from front to rear; it belongs to the brake and stays where it is.
    callouts:
      - {on: $stage-bolts, across: 50, down: 10}
      - {on: $stage-cover, across: 50, down: 50}
""")

GEAR_FIGURE = Template("""\
  $stage-inside:
    file: figures/$stage-inside.svg
    title: The $stage gear behind its cover
    alt: >-
      The $stage gear fills the round opening, and its teeth come close to the edge.
      The dial gauge stands on the lower edge of the opening, and its tip rests on a tooth.
      The sealing face runs around the opening, with the groove for the ring in its middle.
    callouts:
      - {on: $stage-gear, across: 50, down: 50}
      - {on: dial-gauge, across: 50, down: 90}
""")

SECTION = Template("""\
  - title: Measure the $stage stage
    intro: >-
      The $stage stage is opened, measured and closed before the next one is touched.
      So two covers never lie on the bench together, and the rings are not mixed up.
      A train that is open in one place only can be turned by hand, which the measuring needs.
    safe-to-stop: The $stage stage is closed again, and the chocks stay in place.
    safety: [$stage-scratch]
    steps:
      - step: Remove the [$stage-bolts] and the [$stage-cover], and discard the [$stage-ring].
        safety: [$stage-drop, $stage-chips]
        with: [ratchet, socket-13, parts-tray]
        figures: [$stage-outside]
        do:
          - remove: [$stage-bolts, $stage-cover]
          - discard: $stage-ring
        why: >-
          The ring takes the shape of the groove it lay in, and does not seal a second time.
          That is so however good it looks when it comes out.
          A ring that comes out in two pieces has left a third one in the groove more than once.
        tip: >-
          Slacken every bolt by half a turn before you take out the first.
          Leave the top one until last, so that the cover hangs and does not tip.
          Lay the bolts in the [parts-tray] in the order in which they stand on the cover.
      - step: Measure the play of the [$stage-gear] with the [dial-gauge].
        with: [dial-gauge]
$inside\
        do:
          - measure:
              what: $stage-gear
              value: $stage-play
              hold: true
              outcomes:
                - found: The play lies inside the window, and it is the same at each tooth that you try.
                  then: go-on
                - found: The play lies inside the window, and differs from tooth to tooth.
                  then: put-right
                  say: >-
                    Turn the gear by a quarter and measure again.
                    A burr on one tooth holds the tip of the gauge away from it.
                - found: The play lies above the window.
                  then: stop
                  say: >-
                    Show it to the workshop lead.
                    The gear and the one it runs against are renewed together, and the train is not run until then.
                - found: The play lies below the window.
                  then: ask-customer
                  say: >-
                    Ask when the bearing behind the gear was last set.
                    A bearing that was set too tight wears the gear from the other side.
        why: >-
          The play tells how far the teeth have worn, long before anything can be seen on them.
          It is the only size that can be taken without pulling the shaft.
          Write it on the sheet of the loader, where the last three readings stand.
          A play that has grown by half
          since the last service is worth a word to the customer, even inside the window.
        tip: >-
          Rest the foot of the gauge on bare metal. Rock the gear with two fingers,
          and read the needle at both ends before you write anything down.
          The tip belongs on the flank of a tooth, a third of the way down; on the crown it reads nothing of use.
      - step: Fit a new [$stage-ring] and the [$stage-cover], then start the [$stage-bolts] by hand.
        safety: [$stage-drop]
        do:
          - fit: [$stage-ring, $stage-cover]
          - start: $stage-bolts
        why: >-
          A bolt that does not go in by hand stands across its thread,
          and the thread of the housing is softer than the bolt.
          The wrench would turn it in all the same, and would click as if nothing were wrong.
        tip: >-
          A ring that will not stay in its groove stays when it has been warmed in the hand for a minute.
          Put in the top bolt first and let the cover hang on it while you start the others.
      - step: Tighten the [$stage-bolts] with the [torque-wrench].
        with: [torque-wrench, socket-13]
        do:
          - tighten: $stage-bolts
        why: >-
          Bolts that are tightened one after another along the edge tip the cover.
          The ring is then pinched on one side and open on the other.
        tip: >-
          Go across the circle each time, and pull the wrench steadily until it clicks;
          a jerk makes it click too early.
          After the last bolt go round once more; the first ones have come loose while the ring settled.
""")
