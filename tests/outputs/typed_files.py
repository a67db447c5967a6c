"""Measurements files of invented wearers, as they would be typed."""

PLAIN = """\
wearer = "Ada Example"
taken_on = "spring"
unit = "cm"

[measurements]
waist_girth = 76
hip_girth = 98
inside_leg_height = 78
body_rise = 27
"""
"""The four measurements that a draft cannot do without, nothing estimated."""

FULL = (
    PLAIN.replace("[measurements]", 'estimate_like = "women"\n\n[measurements]')
    + "waist_height = 103\nthigh_girth = 58.5\nknee_girth = 37\ntotal_crotch_length = 71\n"
)
"""More measured, the rest estimated."""

UNEVEN = PLAIN + "\n[left]\ninside_leg_height = 77\nhalf_hip_arc = 51\n\n[right]\nhalf_hip_arc = 47\n"
"""A body whose sides differ."""
