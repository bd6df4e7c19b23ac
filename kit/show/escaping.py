"""Text is text: what somebody wrote, made safe at the edge of each output: it shows and never acts."""

import html

# Characters that no XML may hold, and so no picture of a chart; shown as what they are, something unreadable.
_UNREADABLE = dict.fromkeys([*range(9), 11, 12, *range(14, 32), 0x7F, 0xFFFE, 0xFFFF], "\ufffd")


def in_html(text: object) -> str:
    """Return a text as it stands in HTML, in an attribute too.

    Examples
    --------
    >>> in_html('<img src=x onerror="go()">')
    '&lt;img src=x onerror=&quot;go()&quot;&gt;'
    """
    return html.escape(str(text).translate(_UNREADABLE))


def in_chart(text: object) -> str:
    """Return a text as it stands in a label of a chart, where plotly reads ``<b>``, ``<a>`` and entities.

    Examples
    --------
    >>> in_chart("<b>Beans</b> & rice")
    '&lt;b&gt;Beans&lt;/b&gt; &amp; rice'
    """
    return html.escape(str(text).translate(_UNREADABLE), quote=False)
