// test: test bracket, left hand. Lengths in mm; x forward, y left, z up.
//
// Built from
//   ear_width = 70 mm
//   bend = 0.523598776 rad
//   bolts = 2
//   bolt_size = M12
// Parts (mark, name, material: where it stands)
//   TB-L1 ear S355: ear-1, ear-2
//   TB-L2 gusset S355: gusset-1, gusset-2
//   TB-L3 backing plate S355: backing
//   TB-L5 angle S355: base
//   TB-P1 pin 42CrMo4: pin
// A change of thickness or hole here changes this picture and nothing else: cut files and checks keep the numbers above.
// The thickness of a bent or rolled plate is not among the variables: its flat shape was worked out for the thickness it has. Build the
// bracket again for another.
// Bent plates lie flat when they are shown alone and are folded in the assembly; rolled plates stand flat. Holes are finished
// size, and no facet makes one smaller. With d = 2 PI / facets a volume is off by less than
// d^2 / 12 * thickness * (sum of radius^2 * sweep over arcs and holes), for bends with their length as thickness.

/* [View] */
// what to show; a single part lies as it is cut
part = "assembly"; // [assembly, ear-1, gusset-1, backing, base, pin, backing-folded]
// how far parts move out from the middle
explode = 0; // [0:5:300]
// sides of a full circle
facets = 96; // [12:4:360]

/* [Thickness] */
// ear
thickness_ear = 12; // [6:0.5:24]
// gusset
thickness_gusset = 8; // [4:0.5:16]

/* [Holes, finished diameter] */
// pin hole of ear
pin_hole_ear = 25.3; // [12.6:0.1:50.6]
// drain hole of gusset
drain_hole_gusset = 9; // [4.5:0.5:18]
// bolt hole of backing plate, bolt hole of angle
bolt_hole_backing_plate = 13.5; // [6.5:0.5:27]

/* [Hidden] */

// points from a to before b on an arc; k is the tangent of a quarter of its sweep, counter-clockwise positive
function arc(a, b, k) = k == 0 ? [a] :
  let (h = 2 * atan(k), n = max(1, ceil(abs(2 * h) * facets / 360 - 0.001)), d = b - a)
  [for (i = [0 : n - 1]) let (s = sin(i / n * h) / sin(h), t = (i / n - 1) * h)
    a + s * [cos(t) * d[0] - sin(t) * d[1], sin(t) * d[0] + cos(t) * d[1]]];
function points(l) = [for (i = [0 : len(l) - 1])
  let (p = l[i], q = l[(i + 1) % len(l)]) each arc([p[0], p[1]], [q[0], q[1]], p[2])];
module outline(l) { polygon(points(l)); }
// the flats touch the true circle
module hole(d) { circle(d = d / cos(180 / facets), $fn = facets); }
module place(away, pose) { translate(explode * away) multmatrix(pose) children(); }

// children of a flat pattern, turned with what a bend moves; its frame has x along the bend's line and y towards what moves
module turned(frame, back, take, radius, angle, thickness) {
  middle = sign(angle) * (radius + thickness / 2);
  multmatrix(frame) translate([0, -take / 2, middle]) rotate([angle, 0, 0]) translate([0, -take / 2, -middle]) multmatrix(back) children();
}
// the bend itself, square at its ends
module bend(frame, from, to, take, radius, angle, thickness) {
  a = abs(angle);
  r = radius + thickness;
  k = tan(a / 4);
  multmatrix(frame) translate([from, -take / 2, sign(angle) * (radius + thickness / 2)]) mirror([0, 0, angle < 0 ? 1 : 0])
    multmatrix([[0, 0, 1, 0], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 0, 1]]) linear_extrude(height = to - from)
      outline([[0, -r, k], [r * sin(a), -r * cos(a), 0], [radius * sin(a), -radius * cos(a), -k], [0, -radius, 0]]);
}

// TB-L1 ear S355: ear-1, ear-2
ear_1_outer = [
  [-35, 0, 0],
  [35, 0, 0],
  [27.86628658, 72.73314329, 0.906717751],
  [-27.86628658, 72.73314329, 0],
];
ear_1_cutout_1 = [
  [-8, 27, 0],
  [8, 27, 1],
  [8, 37, 0],
  [-8, 37, 1],
];
module ear_1_2d() {
  difference() {
    outline(ear_1_outer);
    translate([0, 70]) hole(pin_hole_ear);
    outline(ear_1_cutout_1);
  }
}
module ear_1() {
  linear_extrude(height = thickness_ear, center = true, convexity = 10) ear_1_2d();
}

// TB-L2 gusset S355: gusset-1, gusset-2
gusset_1_outer = [
  [8, 0, 0],
  [45, 0, 0],
  [45, 8, -0.2],
  [8, 50, 0],
  [0, 50, 0],
  [0, 8, 0],
];
module gusset_1_2d() {
  difference() {
    outline(gusset_1_outer);
    translate([12, 16]) hole(drain_hole_gusset);
  }
}
module gusset_1() {
  linear_extrude(height = thickness_gusset, center = true, convexity = 10) gusset_1_2d();
}

// TB-L3 backing plate S355: backing
backing_outer = [
  [-75, -20, 0.414213562],
  [-65, -30, 0],
  [65, -30, 0.414213562],
  [75, -20, 0],
  [75, 20, 0.414213562],
  [65, 30, 0],
  [-65, 30, 0.414213562],
  [-75, 20, 0],
];
module backing_2d() {
  difference() {
    outline(backing_outer);
    translate([-50, 0]) hole(bolt_hole_backing_plate);
    translate([50, 0]) hole(bolt_hole_backing_plate);
  }
}
module backing() {
  linear_extrude(height = 10, center = true, convexity = 10) backing_2d();
}
backing_face_1_outer = [
  [-75, 15.549410407, 0],
  [-75, -20, 0],
  [-74.961946981, -20.871557427, 0],
  [-74.84807753, -21.736481777, 0],
  [-74.659258263, -22.588190451, 0],
  [-74.396926208, -23.420201433, 0],
  [-74.06307787, -24.226182617, 0],
  [-73.660254038, -25, 0],
  [-73.191520443, -25.735764364, 0],
  [-72.660444431, -26.427876097, 0],
  [-72.071067812, -27.071067812, 0],
  [-71.427876097, -27.660444431, 0],
  [-70.735764364, -28.191520443, 0],
  [-70, -28.660254038, 0],
  [-69.226182617, -29.06307787, 0],
  [-68.420201433, -29.396926208, 0],
  [-67.588190451, -29.659258263, 0],
  [-66.736481777, -29.84807753, 0],
  [-65.871557427, -29.961946981, 0],
  [-65, -30, 0],
  [65, -30, 0],
  [65.871557427, -29.961946981, 0],
  [66.736481777, -29.84807753, 0],
  [67.588190451, -29.659258263, 0],
  [68.420201433, -29.396926208, 0],
  [69.226182617, -29.06307787, 0],
  [70, -28.660254038, 0],
  [70.735764364, -28.191520443, 0],
  [71.427876097, -27.660444431, 0],
  [72.071067812, -27.071067812, 0],
  [72.660444431, -26.427876097, 0],
  [73.191520443, -25.735764364, 0],
  [73.660254038, -25, 0],
  [74.06307787, -24.226182617, 0],
  [74.396926208, -23.420201433, 0],
  [74.659258263, -22.588190451, 0],
  [74.84807753, -21.736481777, 0],
  [74.961946981, -20.871557427, 0],
  [75, -20, 0],
  [75, 15.549410407, 0],
];
module backing_face_1() {
  difference() {
    outline(backing_face_1_outer);
    translate([-50, 0]) hole(bolt_hole_backing_plate);
    translate([50, 0]) hole(bolt_hole_backing_plate);
  }
}
backing_face_2_outer = [
  [73.946258993, 24.450589593, 0],
  [73.660254038, 25, 0],
  [73.191520443, 25.735764364, 0],
  [72.660444431, 26.427876097, 0],
  [72.071067812, 27.071067812, 0],
  [71.427876097, 27.660444431, 0],
  [70.735764364, 28.191520443, 0],
  [70, 28.660254038, 0],
  [69.226182617, 29.06307787, 0],
  [68.420201433, 29.396926208, 0],
  [67.588190451, 29.659258263, 0],
  [66.736481777, 29.84807753, 0],
  [65.871557427, 29.961946981, 0],
  [65, 30, 0],
  [-65, 30, 0],
  [-65.871557427, 29.961946981, 0],
  [-66.736481777, 29.84807753, 0],
  [-67.588190451, 29.659258263, 0],
  [-68.420201433, 29.396926208, 0],
  [-69.226182617, 29.06307787, 0],
  [-70, 28.660254038, 0],
  [-70.735764364, 28.191520443, 0],
  [-71.427876097, 27.660444431, 0],
  [-72.071067812, 27.071067812, 0],
  [-72.660444431, 26.427876097, 0],
  [-73.191520443, 25.735764364, 0],
  [-73.660254038, 25, 0],
  [-73.946258993, 24.450589593, 0],
];
module backing_face_2() {
  difference() {
    outline(backing_face_2_outer);
  }
}
module backing_folded() {
  linear_extrude(height = 10, center = true, convexity = 10) backing_face_1();
  turned([[1, 0, 0, -75], [0, 1, 0, 20], [0, 0, 1, 0], [0, 0, 0, 1]], [[1, 0, 0, 75], [0, 1, 0, -20], [0, 0, 1, 0], [0, 0, 0, 1]], 8.901179185, 12, 30, 10) linear_extrude(height = 10, center = true, convexity = 10) backing_face_2();
  bend([[1, 0, 0, -75], [0, 1, 0, 20], [0, 0, 1, 0], [0, 0, 0, 1]], 0, 150, 8.901179185, 12, 30, 10);
}

// TB-L5 angle S355: base
base_outer = [
  [0, 0, 0],
  [100, 0, 0],
  [100, 10, 0],
  [22, 10, -0.414213562],
  [10, 22, 0],
  [10, 100, 0],
  [0, 100, 0],
];
module base_2d() {
  difference() {
    outline(base_outer);
  }
}
// length along x, see the section in y and z
module base() {
  difference() {
    multmatrix([[0, 0, 1, 0], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 0, 1]])
      linear_extrude(height = 160, convexity = 10) base_2d();
    multmatrix([[0, 1, 0, 30], [0, 0, 1, -1], [1, 0, 0, 60], [0, 0, 0, 1]])
      linear_extrude(height = 24) hole(bolt_hole_backing_plate);
    multmatrix([[0, 1, 0, 130], [0, 0, 1, -1], [1, 0, 0, 60], [0, 0, 0, 1]])
      linear_extrude(height = 24) hole(bolt_hole_backing_plate);
  }
}

// TB-P1 pin 42CrMo4: pin
module pin() { cylinder(d = 25, h = 70, center = true, $fn = facets); }

// shank from z = -below to above; head and nut are plain discs, not to any standard
module bolt(d, below, above) {
  translate([0, 0, -below]) cylinder(d = d, h = below + above, $fn = facets);
  translate([0, 0, above]) cylinder(d = 1.7 * d, h = 0.65 * d, $fn = facets);
  translate([0, 0, -below - 0.8 * d]) cylinder(d = 1.7 * d, h = 0.8 * d, $fn = facets);
}

module assembly() {
  color([0.72, 0.75, 0.78]) {
    place([-0.423480841, 0.859417, 0.286472333], [[0, 0, 1, -17], [1, 0, 0, 58], [0, 1, 0, 10], [0, 0, 0, 1]]) ear_1();
    place([0.423480841, 0.859417, 0.286472333], [[0, 0, 1, 17], [1, 0, 0, 58], [0, 1, 0, 10], [0, 0, 0, 1]]) ear_1();
  }
  color([0.72, 0.75, 0.78]) {
    place([0.778403527, 0.590218059, -0.213847123], [[1, 0, 0, 23], [0, 0, -1, 58], [0, 1, 0, 10], [0, 0, 0, 1]]) gusset_1();
    place([-0.778403527, 0.590218059, -0.213847123], [[-1, 0, 0, -23], [0, 0, 1, 58], [0, 1, 0, 10], [0, 0, 0, 1]]) gusset_1();
  }
  color([0.72, 0.75, 0.78]) {
    place([0, -0.940190625, 0.340648777], [[1, 0, 0, 0], [0, 0, -1, -11], [0, 1, 0, 60], [0, 0, 0, 1]]) backing_folded();
  }
  color([0.60, 0.64, 0.68]) {
    place([0, 0.995579503, 0.093922595], [[1, 0, 0, -80], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1]]) base();
  }
  color([0.45, 0.46, 0.48]) {
    place([2, 0, 0], [[0, 0, 1, 0], [0, 1, 0, 58], [-1, 0, 0, 80], [0, 0, 0, 1]]) pin();
  }
  color([0.45, 0.46, 0.48]) place([0, 2, 0], [[0, 1, 0, -50], [0, 0, 1, 0], [1, 0, 0, 60], [0, 0, 0, 1]]) bolt(12, 16, 10);
  color([0.45, 0.46, 0.48]) place([0, 2, 0], [[0, 1, 0, 50], [0, 0, 1, 0], [1, 0, 0, 60], [0, 0, 0, 1]]) bolt(12, 16, 10);
}

if (part == "assembly") assembly();
else if (part == "ear-1") ear_1();
else if (part == "gusset-1") gusset_1();
else if (part == "backing") backing();
else if (part == "backing-folded") backing_folded();
else if (part == "base") base();
else if (part == "pin") pin();
