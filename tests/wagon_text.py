"""The text of a small complete vehicle file, for tests that compute its numbers by hand."""

WAGON = """
name = "Test wagon"
[chassis]
front_axle_mass = "1120 kg"
rear_axle_mass = "1010 kg"
wheelbase = "2.78 m"
front_track = "1.60 m"
centre_of_mass_height = "0.69 m"
front_roll_share = 0.55
[tire]
size = "245/75R16"
mass = "17 kg"
vertical_stiffness = "260 N/mm"
[wheel]
rim_width = "7 in"
offset = "30 mm"
mass = "9 kg"
[hub]
face_to_bearing_centre = "42 mm"
rotating_mass = "14 kg"
"""
BALLS = """
[bearing]
kind = "two-row ball"
balls_per_row = 13
ball_diameter = "12.7 mm"
pitch_diameter = "62 mm"
contact_angle = "35 deg"
row_spacing = "24 mm"
"""
# nothing left to draw: neither preload nor ratings
FIXED_BALLS = BALLS + 'preload = "0 um"\ndynamic_rating = "60 kN"\nstatic_rating = "50 kN"\n'
