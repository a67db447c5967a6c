"""What the report says about the fit."""

import re

import pytest

from drafting import Block, Ease, draft_block
from drafting.base.errors import Severity
from drafting.base.findings import Finding
from drafting.body.body import Origin
from drafting.body.measurements import Population
from drafting.report.block_figures import block_figures
from drafting.report.block_findings import block_findings
from drafting.report.fit import GirthLine, crotch_line, girth_lines, means_used
from tests.sewn_block import leg_girth
from tests.wearers import wearer


def line(block: Block, level: str) -> GirthLine:
    return next(line for line in girth_lines(block) if line.level == level)


def found(block: Block, code: str) -> list[Finding]:
    return [finding for finding in block_findings(block) if finding.code == code]


def test_the_levels_come_from_the_waist_down() -> None:
    block = draft_block(wearer(
        top_hip_girth=900, thigh_girth=570, mid_thigh_girth=500, knee_girth=380, calf_girth=365,
        ankle_girth=220, heel_girth=320,
    ))  # fmt: skip
    lines = girth_lines(block)
    assert [line.level for line in lines] == [
        "waist", "top hip", "hip", "thigh", "mid thigh", "knee", "calf", "ankle", "hem"
    ]  # fmt: skip
    heights = [line.height for line in lines]
    assert heights == sorted(heights, reverse=True)
    assert all(line.body is not None for line in lines)


def test_ease_is_pattern_less_body() -> None:
    block = draft_block(wearer(), ease=Ease(waist=12, hip=34))
    assert line(block, "waist").ease == pytest.approx(12, abs=0.1)
    assert line(block, "hip").ease == pytest.approx(34, abs=0.1)
    assert line(block, "waist").pattern == pytest.approx(772, abs=0.1)


def test_what_was_not_measured_has_a_pattern_and_no_ease() -> None:
    thigh = line(draft_block(wearer()), "thigh")
    assert (thigh.body, thigh.ease, thigh.origin) == (None, None, None)
    assert thigh.pattern > 600
    assert thigh.enough


def test_a_guess_is_reported_as_one_with_its_spread() -> None:
    thigh = line(draft_block(wearer(stature=1650, estimate_like=Population.WOMEN)), "thigh")
    assert thigh.origin is Origin.ESTIMATED
    assert thigh.spread == pytest.approx(19)  # Natick TR-15/007: 1.9 cm


def test_a_level_counts_as_short_by_more_than_a_sewer_can_see() -> None:
    def knee(pattern: float) -> GirthLine:
        return GirthLine("knee", 450, 400, Origin.MEASURED, 0, pattern, 40)

    assert knee(440).enough
    assert knee(439.5).enough
    assert not knee(437).enough


def test_the_pattern_girths_are_those_of_the_outline() -> None:
    block = draft_block(wearer(thigh_girth=620, knee_girth=390, calf_girth=380, ankle_girth=220))
    for level in ("thigh", "knee", "calf", "ankle"):
        assert line(block, level).pattern == pytest.approx(
            leg_girth(block, line(block, level).height), abs=0.1
        )


def test_a_top_hip_that_does_not_go_in_is_said_to_be_short() -> None:
    # As large as the hip half way up to a small waist: no side seam can follow that.
    block = draft_block(wearer(waist_girth=700, top_hip_girth=1040))
    [short] = [f for f in found(block, "girth-short") if f.where == "top hip"]
    assert short.severity is Severity.WARNING
    assert short.amounts[1] == 1040
    assert "104.0 cm" in short.say()


def test_the_crotch_line_holds_both_parts_and_what_the_whole_should_be() -> None:
    crotch = crotch_line(draft_block(wearer(total_crotch_length=700, front_crotch_length=315)))
    assert crotch.target == 705
    assert crotch.total == crotch.front + crotch.back


def test_without_a_crotch_length_there_is_no_target() -> None:
    crotch = crotch_line(draft_block(wearer()))
    assert crotch.target is None
    assert crotch.total > 600


@pytest.mark.parametrize(("length", "word"), [(1000, "short"), (500, "long")])
def test_a_crotch_length_out_of_reach_is_said_in_millimetres_and_not_forced(length: int, word: str) -> None:
    block = draft_block(wearer(total_crotch_length=length))
    [finding] = found(block, "crotch-out-of-reach")
    miss, drawn, wanted = finding.amounts
    assert finding.severity is Severity.WARNING
    assert wanted == length + 5
    assert miss == pytest.approx(abs(wanted - drawn))
    assert drawn == pytest.approx(block.crotch_length)
    assert word in finding.text


def test_a_crotch_length_within_reach_is_no_finding() -> None:
    assert found(draft_block(wearer(total_crotch_length=690)), "crotch-out-of-reach") == []


def test_the_means_that_were_used_are_named_with_their_amounts() -> None:
    block = draft_block(wearer(total_crotch_length=720))
    used = {means.name: means.amount for means in means_used(block)}
    assert {"centre-back height", "seat-line lean", "back fork", "front fork"} <= used.keys()
    assert all(amount > 0 for amount in used.values())
    [note] = found(block, "means-used")
    assert note.severity is Severity.NOTE
    assert "back fork" in note.text


def test_a_means_that_goes_back_carries_a_minus_whatever_its_unit() -> None:
    # a centre back that stands lower than the proportions' turns the seat line back
    lower = draft_block(wearer(hip_girth=1040, body_rise=225, total_crotch_length=590))
    [note] = found(lower, "means-used")
    assert "back fork −{" in note.text
    assert re.search(r"seat-line lean −\d+\.\d°", note.text)


def test_no_means_are_named_when_none_was_needed() -> None:
    assert means_used(draft_block(wearer())) == ()
    assert found(draft_block(wearer()), "means-used") == []


def test_the_parts_of_a_crotch_length_are_told_whether_they_count_or_not() -> None:
    # by -83 + 0.475 * 700 + 0.056 * 980 + 0.003 * 760 a front part of 306.7 is expected, one spread is 20
    usual, long = (draft_block(wearer(total_crotch_length=700, front_crotch_length=mm)) for mm in (315, 350))
    [plain], [moved] = found(usual, "crotch-split"), found(long, "crotch-split")
    assert plain.amounts == pytest.approx((315, 306.7), abs=0.1)
    assert "as near as a tape tells" in plain.text
    assert "centre front stands higher" in moved.text and "centre back lower" in moved.text


@pytest.mark.parametrize("part", ["front", "back"])
def test_one_part_of_the_crotch_length_without_the_whole_is_told_as_unused(part: str) -> None:
    block = draft_block(wearer(**{f"{part}_crotch_length": 320}))
    [said] = found(block, "crotch-part-unused")
    assert said.severity is Severity.WARNING
    assert part in said.text and "total crotch length" in said.text and said.amounts == (320,)
    assert block.crotch_length == draft_block(wearer()).crotch_length
    whole = draft_block(wearer(total_crotch_length=700, **{f"{part}_crotch_length": 320}))
    assert found(whole, "crotch-part-unused") == []


def test_without_crotch_length_and_sex_the_seam_is_told_with_direction_and_spread() -> None:
    # women 7.24 + 0.414 * 98 - 0.078 * 76 + 0.972 * 24.5, men 0.71 + 0.352 * 98 + 0.05 * 76 + 0.995 *
    # 24.5, and 5 of the waist above the survey's: 2.4 cm apart, so neither is drafted
    block = draft_block(wearer())
    [said] = found(block, "crotch-guessed")
    women, men = said.amounts[2:]
    assert (women, men) == pytest.approx((656.9 + 50 * (2 - 0.972), 633.8 + 50 * (2 - 0.995)), abs=0.5)
    assert "too short" in said.say() and "give or take" in said.say()
    assert said.amounts[0] == pytest.approx((women + men) / 2 + 5 - block.crotch_length)


def test_where_the_lines_of_both_sexes_agree_their_mean_is_drafted_and_told() -> None:
    block = draft_block(wearer(waist_girth=930, hip_girth=1020))
    value = block.body.values["total_crotch_length"]
    assert value.origin is Origin.ESTIMATED and value.spread > 20
    assert block.crotch_length == pytest.approx(value.length.mm + 5, abs=0.1)
    [said] = found(block, "crotch-guessed")
    assert "their mean" in said.text and said.amounts[1] == value.length.mm


def test_a_knee_that_the_style_would_draw_too_narrow_is_told() -> None:
    # a straight leg has 0.46 of 980 at the knee, 450.8; 440 round and 40 of ease are more
    [said] = found(draft_block(wearer(knee_girth=440)), "knee-raised")
    assert said.amounts == pytest.approx((450.8, 480, 440, 40))
    assert found(draft_block(wearer(knee_girth=400)), "knee-raised") == []


def test_a_widened_thigh_is_said_with_its_amount() -> None:
    [note] = found(draft_block(wearer(thigh_girth=650)), "thigh-widened")
    assert note.amounts[0] > 10


def test_hip_less_waist_beyond_every_limit_is_said() -> None:
    block = draft_block(wearer(waist_girth=560, hip_girth=1100))
    [finding] = found(block, "suppression-left-over")
    over = block.waist_girth - 560 - block.ease.waist
    assert finding.amounts[0] == pytest.approx(over, abs=1)
    assert over > 20


def test_a_disagreement_of_the_two_rises_is_passed_on() -> None:
    block = draft_block(wearer(body_rise=265, waist_height=1080))
    [finding] = found(block, "rise-disagrees")
    assert finding.amounts[:2] == (265, 300)


def test_the_figures_are_the_report_in_centimetres() -> None:
    block = draft_block(wearer(total_crotch_length=700, thigh_girth=600))
    figures = block_figures(block)
    assert figures["unit"] == "cm"
    assert figures["girths"]["waist"]["body"] == 76
    assert figures["girths"]["hip"]["ease"] == 3
    assert {"body", "ease", "pattern"} <= figures["girths"]["thigh"].keys()
    assert {"waist", "hip", "thigh", "knee", "hem"} <= figures["girths"].keys()
    assert figures["crotch"]["target"] == 70.5
    assert figures["crotch"]["total"] == pytest.approx(70.5, abs=0.01)
    assert figures["crotch"]["total"] == pytest.approx(
        figures["crotch"]["front"] + figures["crotch"]["back"], abs=0.002
    )
    assert all(seam["passes"] for seam in figures["seams"])
    assert [finding["code"] for finding in figures["findings"]] == [f.code for f in block_findings(block)]
