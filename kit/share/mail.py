"""The mail to everyone who came: a draft that opens unsent, with every address left to her."""

from collections.abc import Mapping
from email.message import EmailMessage
from email.policy import SMTP

from kit.share.contents import Contents
from kit.share.handout import NO_ALLERGENS
from kit.share.pages import filled

RECORDING, SURVEY = "[link to the recording]", "[link to the survey]"
_KINDS = {
    ".html": ("text", "html"),
    ".csv": ("text", "csv"),
    ".zip": ("application", "zip"),
}


def mail(contents: Contents, attached: Mapping[str, bytes], recording: str = "", survey: str = "") -> bytes:
    """Return a mail draft with a plain-text and an HTML part and its attachments.

    Parameters
    ----------
    contents : Contents
        What it says.
    attached : mapping of str to bytes
        The files that go with it, by name.
    recording, survey : str
        Their links; a place for each is left where none is given.

    References
    ----------
    RFC 5322 and RFC 2046. ``X-Unsent: 1`` opens a saved mail as a draft: common practice of mail programs.
    """
    values = {
        "title": contents.title,
        "series": contents.talk.series,
        "recipe": contents.numbers.recipe,
        "spoken": {line.name: line.spoken for line in contents.serving if line.nutrient in _FIRST},
        "points": contents.points,
        "allergens": contents.allergens,
        "no_allergens": NO_ALLERGENS,
        "keeping": contents.keeping,
        "cautions": contents.cautions[:2],
        "recording": recording or RECORDING,
        "survey": survey or SURVEY,
        "attached": [(name, ATTACHED[name]) for name in attached if name in ATTACHED],
    }
    draft = EmailMessage(policy=SMTP)
    draft["Subject"] = _one_line(f"{contents.title}: the recipe and its numbers")
    draft["X-Unsent"] = "1"
    draft.set_content(filled("mail.txt.j2", **values))
    draft.add_alternative(filled("mail.html.j2", **values), subtype="html")
    for name, content in attached.items():
        kind, subtype = _KINDS.get(name[name.rfind(".") :], ("application", "octet-stream"))
        if kind == "text":
            draft.add_attachment(content.decode("utf-8"), subtype=subtype, filename=name)
        else:
            draft.add_attachment(content, maintype=kind, subtype=subtype, filename=name)
    return draft.as_bytes()


_FIRST = ("energy", "protein", "fiber", "sodium")
ATTACHED = {
    "page.html": "a page whose sliders still work: open it in a browser, on a phone too",
    "handout.html": "the recipe and the numbers for printing",
    "numbers.csv": "every number as a table",
    "notebook.zip": "the notebooks, for those who like to compute",
}


def _one_line(text: str) -> str:
    """Return a text on one line: a header can hold no other."""
    return " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())
