"""The command that plans the cloth: how much to buy, and where every piece lies."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import click

from outputs.commands.draft_options import folder_force_option
from outputs.commands.style_arguments import TypedChanges, style_arguments
from outputs.commands.terminal import bar, say_all, tell


@click.command(epilog='Example: jeansblock cloth ada-field.toml --width "150 cm"')
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE...")
@style_arguments
@click.option("--width", metavar="LENGTH", help='Width of the denim: "150 cm", "60 in".  [default: 150 cm]')
@click.option("--pocketing-width", metavar="LENGTH", help="Of the pocketing.  [default: 110 cm]")
@click.option("--interfacing-width", metavar="LENGTH", help="Of the interfacing.  [default: 90 cm]")
@click.option("--folded", is_flag=True, help="Cut pairs on the double, the cloth folded lengthwise.")
@click.option("--one-way", is_flag=True, help="All hems to one end, for cloth with a nap or a print.")
@click.option(
    "--seconds", type=click.IntRange(1, 3600),
    help="How long to look for a shorter plan of the denim (needs the library spyrrow).",
)  # fmt: skip
@click.option(
    "--plan",
    type=click.Path(path_type=Path),
    help="Repeat the plan of a cloth-plan.json for the same pieces.",
)
@click.option(
    "--out", type=click.Path(path_type=Path), help="The folder to write; else named after wearer and style."
)
@folder_force_option
@click.option("--anyway", is_flag=True, help="Plan a pattern even if a check finds it faulty.")
def cloth(
    files: tuple[Path, ...],
    style: str,
    changes: TypedChanges,
    folded: bool,
    one_way: bool,
    seconds: int | None,
    plan: Path | None,
    out: Path | None,
    force: bool,
    anyway: bool,
    width: str | None,
    pocketing_width: str | None,
    interfacing_width: str | None,
) -> None:
    """Plan how jeans are cut from the cloth.

    Drafts each FILE as draft does and lays all their pieces on denim, pocketing and interfacing: how much to
    buy as cloth-plan.pdf, drawn to scale, and cloth-plan.json, from which --plan repeats it.
    """
    from outputs.cloth.options import read_cloth_options
    from outputs.files.all_problems import gather, gather_all
    from outputs.files.folder import refuse_overwriting, write_folder
    from outputs.files.text_file import read_file
    from outputs.reading.measurements_file import read_measurements
    from outputs.reading.style_file import find_style
    from outputs.words.file_names import safe_name

    options, chosen, lies, read = gather(
        changes.read,
        lambda: find_style(style),
        lambda: read_cloth_options(
            widths=(width, pocketing_width, interfacing_width),
            folded=folded,
            one_way=one_way,
            seconds=seconds,
            repeated=str(plan) if plan else None,
        ),
        lambda: gather_all(partial(read_measurements, file) for file in files),
    )
    others = f" and {len(read) - 1} more" if len(read) > 1 else ""
    target = out or Path(safe_name(f"{read[0].wearer}{others}", chosen.name, "cloth"))
    refuse_overwriting(target, force=force)
    repeated = read_file(plan) if plan else None

    tell("drafting")
    from outputs.jobs.cloth import plan_cloth
    from outputs.lines.cloth import cloth_lines

    planned = plan_cloth(
        read, chosen, options, lies, repeated=repeated, anyway=anyway, progress=tell, waiting=bar
    )
    say_all(cloth_lines(planned, write_folder(target, planned.files, force=force, progress=tell)))
