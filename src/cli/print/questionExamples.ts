/** Full examples of the files of `ask arm` and `ask frame`; docs/how-to shows the same, and a test reads both. */
export const ARM_FILE = `# along the arm from the root face to the motor's axis, across to the right, up
length: 90 mm
rootWidth: 10 mm
tipWidth: 10 mm            # straight taper; or instead of both:
# outline: [{ at: 0, width: 12 mm }, { at: 0.5, width: 9 mm }, { at: 1, width: 12 mm }]
thickness: 6 mm
material:                  # 1 along the arm, 2 across it in the plate, 3 through
  E1: 52 GPa
  E2: 52 GPa
  E3: 9 GPa                # E2 when absent
  nu12: 0.12
  nu13: 0.3                # nu12 when absent
  nu23: 0.3                # nu12 when absent
  G12: 8 GPa
  G13: 3.5 GPa
  G23: 3.5 GPa             # G13 when absent
  density: 1550 kg/m3
# or, instead of material, plies from the top with the angle from the arm to their fibres:
# laminate: { ply: 3k twill, plyThickness: 0.21 mm, angles: [0 deg, 45 deg, 45 deg, 0 deg] }
grip:
  kind: held face          # held face | between plates | one piece | plain
  # extraOutOfPlane: 1 mm    a loose joint makes the arm act longer; extraInPlane and extraTorsion alike
tipMass:                   # motor and propeller as one rigid body; leave out for a bare arm
  mass: 25 g
  height: 11 mm            # of its centre of gravity above the arm's mid-plane
  inertiaAlong: 1433.3 g mm2    # about its centre of gravity: about the arm's axis,
  inertiaAcross: 1433.3 g mm2   # about the axis across the arm,
  inertiaUp: 1800 g mm2         # about the upright axis
load:                      # at the middle of the tip's section
  force: { along: 0 N, across: 0 N, up: 10 N }
  moment: { along: 0 N mm, across: 0 N mm, up: 0 N mm }
stressAt: { along: 10 mm, across: 0 mm, up: 3 mm }
modes: 4
`;

export const FRAME_FILE = `# x forward, y right; heights are told upwards
arms:
  - name: front right      # each alone, like this one ...
    motor: { forward: 84.85 mm, right: 84.85 mm }
    root: { forward: 21.21 mm, right: 21.21 mm }
    rootWidth: 14 mm
    tipWidth: 10 mm
    thickness: 5 mm
    material: &sheet { E1: 50 GPa, E2: 50 GPa, nu12: 0.3, G12: 19.23 GPa, G13: 19.23 GPa, density: 1550 kg/m3 }
    tipMass: &motor
      { mass: 35 g, height: 12 mm, inertiaAlong: 2882 g mm2, inertiaAcross: 2882 g mm2, inertiaUp: 3430 g mm2 }
  - name: other            # ... or several equal ones at once
    angles: [135 deg, 225 deg, 315 deg]
    motorRadius: 120 mm
    rootRadius: 30 mm
    rootWidth: 14 mm
    tipWidth: 10 mm
    thickness: 5 mm
    material: *sheet
    tipMass: *motor
hub:
  kind: rigid              # rigid | one plate
  mass: 350 g
  height: 10 mm            # of its centre of gravity above the arms' mid-plane; forward and right alike
  inertiaForward: 93333 g mm2     # about its centre of gravity, about the fore-and-aft axis,
  inertiaRight: 233333 g mm2      # the athwart one,
  inertiaUp: 233333 g mm2         # and the upright one
  # for one plate also, with arms of grip { kind: one piece }:
  # square: 60 mm           or outline: [{ forward: 30 mm, right: 30 mm }, ...], convex round the middle
  # heldRadius: 14 mm       the middle that stack and pack hold stiff
  # thickness: 5 mm
  # material: *sheet
  # fibreAngle: 0 deg       of the plate's E1 from the nose
modes: 8
`;

const example = (what: string, file: string) =>
  `\nExample:\n  quadwright ask ${what} --file ${what}.yaml --json\n\n${what}.yaml:\n${file.replace(/^(?=.)/gm, '  ')}`;

export const ARM_EXAMPLE = example('arm', ARM_FILE);
export const FRAME_EXAMPLE = example('frame', FRAME_FILE);
