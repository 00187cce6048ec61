/** A small shelf and a build of it, whole, for tests to break in one place. */
export const SHELF = `format: quadwright-shelf-1
parts:
  - id: gannet-frame
    kind: frame
    name: Gannet frame
    invented: true
    price: 40 GBP
    mass: 110 g
    layout: { kind: true X, diagonal: 226 mm }
    arms: { construction: separate arms, thickness: 5 mm }
    stackPatterns: [30.5 mm]
    motorCircles: [16 mm]
    cameraWidths: [19 mm]
    maxPropeller: 5.2 in
  - id: gannet-motor
    kind: motor
    name: Gannet 2207
    invented: true
    price: 18 GBP
    mass: { value: 33 g, spread: 2 %, trust: measured }
    stator: 2207
    speedConstant: 1850 rpm/V
  - { id: gannet-propeller, kind: propeller, name: Gannet propeller, price: 3 GBP, soldIn: 4, mass: 4.2 g, size: 5.1 x 3.6 x 3 }
  - { id: gannet-pack, kind: pack, name: Gannet pack, price: 30 GBP, mass: 205 g, cells: 6, capacity: 1300 mAh, cRating: 100, connector: skua 60 }
  - { id: gannet-controller, kind: controller, name: Gannet controller, price: 50 GBP, mass: 14 g, form: four in one, current: 45 A, cells: { min: 3, max: 6 }, pattern: 30.5 mm }
  - { id: gannet-brain, kind: flightController, name: Gannet brain, price: 35 GBP, mass: 8 g, pattern: 30.5 mm, cells: { min: 3, max: 6 }, serialPorts: 5 }
  - { id: gannet-camera, kind: camera, name: Gannet camera, price: 25 GBP, mass: 9 g, roles: [flying], width: 19 mm, lens: { law: equidistant, fieldOfView: 130 deg }, power: 1 W }
`;

export const BUILD = `format: quadwright-build-1
name: First of the club
frame: gannet-frame
motors: gannet-motor
propellers: gannet-propeller
controllers: gannet-controller
flightController: gannet-brain
pack: { part: gannet-pack, offset: 4 mm }
cameras:
  - { part: gannet-camera, tilt: 20 deg }
`;

export const BRIEF = `format: quadwright-brief-1
name: Gannet Point
purpose: freestyle
site: { wind: 7 m/s, temperature: 10 degC }
region: UK
budget: 600 GBP
`;
