"""The panels of notebook 4: the follow-up is written with one button, and a survey's answers are shown."""

from pathlib import Path

import ipywidgets as widgets

from kit import files
from kit.errors import KitError
from kit.meal.nutrition import Nutrition, nutrition
from kit.meal.portions import make_more
from kit.share.follow_up import PURPOSES, follow_up, named_before
from kit.share.survey import Survey, survey_of
from kit.share.survey_charts import answers
from kit.show.escaping import in_html
from kit.show.look import style
from kit.show.scenes import under_a_picture
from kit.show.stage import Stage
from kit.show.views import COLUMNS, drawings
from kit.speech.verdict import Verdict
from kit.spreadsheets import table_from
from kit.talk.last_used import last_used, use
from kit.talk.library import read_talk, titles
from kit.talk.talk import Talk
from kit.texts import number, percent

SENT = "sent"  # the folder in the user's own, in which each talk has one
_WORDS = {"description_width": "170px"}
_WIDE = widgets.Layout(width="100%", max_width="760px")


def follow_up_panel(talk: str | Path | None = None) -> widgets.Widget:
    """Return the panel that writes everything that is sent after a talk.

    Parameters
    ----------
    talk : str or pathlib.Path, optional
        The talk to begin with; the last one used by default.

    Raises
    ------
    UnknownNameError
        If there is no such talk.
    """
    return FollowUpPanel(talk or last_used().name).box


class FollowUpPanel:
    """Choose a talk, see what will be left out, write the files.

    Attributes
    ----------
    box : ipywidgets.VBox
        The whole panel.
    """

    def __init__(self, talk: str | Path) -> None:
        self.talk = read_talk(talk)
        known = [(title, name) for name, title in titles().items()]
        if self.talk.name not in dict(known).values():
            known.append((self.talk.title, str(talk)))
        self.choice = widgets.Dropdown(
            options=known, value=known[-1][1], description="Talk", style=_WORDS, layout=_WIDE
        )
        self.choice.value = next(name for _, name in known if name in (self.talk.name, str(talk)))
        self.servings = widgets.BoundedFloatText(
            self.talk.recipe.servings, min=1, max=1000, description="Recipe for", style=_WORDS
        )
        self.recording = widgets.Text(description="Link to the recording", style=_WORDS, layout=_WIDE)
        self.survey = widgets.Text(description="Link to the survey", style=_WORDS, layout=_WIDE)
        self.folder = widgets.Text(self._own_place(), description="Folder", style=_WORDS, layout=_WIDE)
        self.label = widgets.Checkbox(description="Print a serving in label rounding too", indent=False)
        self.replace = widgets.Checkbox(description="Replace an earlier follow-up there", indent=False)
        self.button = widgets.Button(description="Write the follow-up", layout=widgets.Layout(width="240px"))
        self.button.add_class("talk-do")
        self.left, self.written = widgets.HTML(), widgets.HTML()
        self.choice.observe(lambda change: self._choose(change.new), "value")
        self.servings.observe(lambda _change: self._show_left(), "value")
        self.button.on_click(lambda _button: self._write())
        fields = [self.choice, self.servings, self.recording, self.survey, self.folder, self.label, self.replace]
        self.pictures = widgets.VBox(layout=widgets.Layout(width="100%"))
        self.box = widgets.VBox([_sheet(), *fields, self.left, self.button, self.written, self.pictures])
        self.box.add_class("talk-follow")
        self._show_left()

    def _own_place(self) -> str:
        return str(files.own_folder() / SENT / self.talk.name)

    def _choose(self, name: str) -> None:
        try:
            self.talk = read_talk(name)
            use(name)
        except KitError as fault:
            self.left.value = _told(str(fault))
            return
        self.servings.value = self.talk.recipe.servings
        self.folder.value, self.written.value = self._own_place(), ""
        self._show_left()

    def _numbers(self) -> Nutrition:
        return nutrition(make_more(self.talk.recipe, self.servings.value))

    def _show_left(self) -> None:
        numbers = self._numbers()
        self.left.value = named_html(*named_before(self.talk, numbers))
        heading = widgets.HTML("<h3>Pictures for a slide or a chat</h3>")
        self.pictures.children = (heading, _pictures(self.talk, numbers))

    def _write(self) -> None:
        """Write the files, and show each as soon as it is there."""
        self.written.value = "<p>Writing …</p>"
        links = {"recording": self.recording.value.strip(), "survey": self.survey.value.strip()}
        there: list[Path] = []
        try:
            choices = {"label": self.label.value, "replace": self.replace.value}
            for path in follow_up(self.talk, Path(self.folder.value), self._numbers(), **links, **choices):
                there.append(path)
                self.written.value = written_html(self.talk, there)
        except KitError as fault:
            self.written.value = _told(str(fault))


def _pictures(talk: Talk, numbers: Nutrition) -> Stage:
    """Return the charts of a serving, each with buttons that keep it as a picture."""
    drawn = drawings(numbers, numbers, rules=talk.rules)
    columns = [{name: drawn[name] for name in column} for column in COLUMNS]
    return Stage(columns, under_a_picture=under_a_picture(talk))


def named_html(left_out: tuple[Verdict, ...], on_her_word: tuple[Verdict, ...]) -> str:
    """Return what will not be sent, and what is sent on her word alone, each with why."""
    groups = {"Left out of what is sent": left_out, "Sent on your word: the kit cannot tell": on_her_word}
    told = "".join(
        f"<p><b>{heading}:</b></p><ul>{''.join(map(_named, verdicts))}</ul>"
        for heading, verdicts in groups.items()
        if verdicts
    )
    return told or "<p>Every sentence that is sent holds.</p>"


def _named(verdict: Verdict) -> str:
    why = f"<small>{in_html(verdict.verdict)}: {in_html(verdict.because)}</small>"
    return f"<li>{in_html(verdict.say)}<br>{why}</li>"


def written_html(talk: Talk, paths: list[Path]) -> str:
    """Return the files that were written, with what each is for."""
    told = "".join(f"<li><b>{in_html(path.name)}</b>: {in_html(PURPOSES[path.name])}</li>" for path in paths)
    return f'<p role="status">Written to {in_html(paths[0].parent)}:</p><ul>{told}</ul>'


def survey_panel() -> widgets.Widget:
    """Return the panel that shows what people answered afterwards."""
    return SurveyPanel().box


class SurveyPanel:
    """Choose the table of answers, and see them counted, with nobody's name.

    Attributes
    ----------
    box : ipywidgets.VBox
        The whole panel.
    """

    def __init__(self) -> None:
        self.file = widgets.FileUpload(accept=".csv,.tsv,.txt", description="Answers (CSV)")
        self.file.layout.width = "220px"
        self.invited = widgets.BoundedIntText(0, min=0, max=100_000, description="People invited", style=_WORDS)
        self.shown = widgets.VBox()
        self.answered: Survey | None = None
        self.file.observe(lambda change: self._take(change.new), "value")
        self.invited.observe(lambda _change: self._show(), "value")
        self.box = widgets.VBox([_sheet(), widgets.HBox([self.file, self.invited]), self.shown])
        self.box.add_class("talk-follow")

    def _take(self, chosen: tuple[dict, ...]) -> None:
        if not chosen:
            return
        name, content = chosen[0]["name"], bytes(chosen[0]["content"])
        try:
            self.answered = survey_of(table_from(content, name), name)
        except KitError as fault:
            self.answered = None
            self.shown.children = (widgets.HTML(_told(str(fault))),)
            return
        self._show()

    def _show(self) -> None:
        if self.answered is None:
            return
        survey = self.answered
        counted = {f"answers-{place}": one for place, one in enumerate(survey.questions) if one.counts}
        names = list(counted)
        columns = [names[::2], names[1::2]]
        drawings = {name: answers.drawing(one) for name, one in counted.items()}
        stage = [Stage([{name: drawings[name] for name in column} for column in columns if column])] if counted else []
        texts = widgets.HTML(texts_html(survey))
        self.shown.children = (widgets.HTML(f"<p>{in_html(self._rate(survey))}</p>"), *stage, texts)

    def _rate(self, survey: Survey) -> str:
        told = f"{survey.answers} people answered"
        if not self.invited.value:
            return f"{told}."
        try:
            return (
                f"{told}, {percent(survey.response_rate(self.invited.value))} of {number(self.invited.value)} invited."
            )
        except KitError as fault:
            return str(fault)


def texts_html(survey: Survey) -> str:
    """Return what people wrote, what they want next first."""
    wanted = set(survey.wanted_next)
    ordered = sorted((one for one in survey.questions if one.texts), key=lambda one: one not in wanted)
    parts = []
    for question in ordered:
        heading = f"<h3>{in_html(question.asks)}</h3>"
        parts.append(heading + "<ul>" + "".join(f"<li>{in_html(text)}</li>" for text in question.texts) + "</ul>")
    return "".join(parts)


def _told(fault: str) -> str:
    return f'<p role="alert"><b>Please mend:</b> {in_html(fault)}</p>'


def _sheet() -> widgets.HTML:
    return widgets.HTML(f"<style>{style('follow')}</style>")
