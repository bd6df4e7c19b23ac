// The talk on the desk: its title, whether it is saved, the list of talks, and what can be done with a whole talk.
import { add, fill, setText } from "./dom.js";
import { button, told } from "./told.js";

export function talkBar(parent, ask, regions) {
  const head = add(parent, "header", "talk-writing-head");
  const title = add(head, "h2", "talk-title");
  const state = add(head, "p", "talk-state");
  state.setAttribute("role", "status");
  const line = add(head, "div", "talk-line-of-buttons");
  const name = add(line, "label", "", "Talk");
  const list = add(line, "select", "talk-entry talk-talks");
  list.id = `talk-list-${Math.random().toString(36).slice(2)}`;
  name.htmlFor = list.id;
  list.onchange = () => {
    const path = list.value;
    list.value = opened; // until it is open
    ask({ do: "open", path, by: "talk" });
  };
  const form = add(head, "div", "talk-line-of-buttons");
  form.hidden = true;
  const acts = [
    ["New talk", "new", "Title of the new talk", ""],
    ["Make a copy", "duplicate", "Title of the copy", "copy"],
    ["Rename", "rename", "New title", "same"],
  ];
  const opener = {};
  for (const [text, act, label, filled] of acts) opener[act] = button(line, text, () => open(text, act, label, filled));
  opener.delete = button(line, "Delete", () => openDelete());
  regions.set("talk", told(head));
  const asked = add(head, "div", "talk-asked");
  asked.setAttribute("role", "alert");
  const offers = add(head, "div", "talk-drafts");
  regions.set("drafts", told(head));
  let opened = "";

  const close = (back) => {
    form.hidden = true;
    form.replaceChildren();
    back?.focus();
  };
  const open = (text, act, label, filled) => {
    close();
    form.hidden = false;
    const words = add(form, "label", "", label);
    const entry = add(form, "input", "talk-entry talk-title-entry");
    Object.assign(entry, { type: "text", autocomplete: "off", id: `${list.id}-${act}` });
    words.htmlFor = entry.id;
    entry.value = filled ? title.textContent + (filled === "copy" ? " (copy)" : "") : "";
    const go = () => {
      ask({ do: act, title: entry.value, by: "talk" });
      close(opener[act]);
    };
    entry.onkeydown = (event) => {
      const { key } = event;
      if (key === "Enter") {
        event.preventDefault(); // it would press the button that has the focus next
        go();
      }
      if (key === "Escape") close(opener[act]);
    };
    button(form, text, go, "talk-first");
    button(form, "Cancel", () => close(opener[act]));
    entry.focus();
    entry.select();
  };
  const openDelete = () => {
    close();
    form.hidden = false;
    add(form, "span", "", `Put “${title.textContent}” into the bin?`);
    button(form, "Yes, into the bin", () => {
      ask({ do: "delete", by: "talk" });
      close(opener.delete);
    }).focus();
    button(form, "No", () => close(opener.delete));
  };
  const showAsked = (asking) => {
    const had = asked.contains(document.activeElement);
    asked.replaceChildren();
    if (!asking) {
      if (had) list.focus();
      return;
    }
    add(asked, "p", "", asking.text);
    const row = add(asked, "div", "talk-line-of-buttons");
    for (const [how, text] of asking.choices) button(row, text, () => ask({ do: "unsaved", how, by: "talk" }));
    button(row, "Stay here", () => ask({ do: "unsaved", how: "stay", by: "talk" }));
    row.firstChild.focus();
  };
  const showDrafts = (drafts) => {
    if (offers.contains(document.activeElement)) list.focus();
    offers.replaceChildren();
    drafts.forEach(({ title: of, when }, at) => {
      const row = add(offers, "div", "talk-line-of-buttons");
      add(row, "span", "", `Typed and not saved, ${when}: “${of}”`);
      const go = button(row, "Go on with it", () => ask({ do: "draft", at, how: "open", by: "drafts" }));
      const bin = button(row, "Put it into the bin", () => ask({ do: "draft", at, how: "bin", by: "drafts" }));
      for (const one of [go, bin]) one.setAttribute("aria-label", `${one.textContent}: ${of}, ${when}`);
    });
  };
  const showList = (talks) => {
    const given = JSON.stringify(talks);
    if (list.dataset.talks !== given) {
      list.dataset.talks = given;
      list.replaceChildren();
      for (const [label, own] of [["Mine", true], ["Come with the kit", false]]) {
        const group = add(list, "optgroup");
        group.label = label;
        const some = talks.filter((talk) => talk.own === own);
        fill(group, some, (box) => add(box, "option"), (option, talk) => {
          option.value = talk.path;
          setText(option, talk.title);
        });
        if (!some.length) group.remove();
      }
    }
    list.value = opened;
  };

  return {
    show(changes, content) {
      opened = content.opened;
      if (changes.title !== undefined) setText(title, content.title);
      if (changes.state !== undefined) setText(state, content.state);
      showList(content.talks);
      const unsaved = opened.startsWith("new ");
      opener.duplicate.hidden = unsaved;
      opener.rename.hidden = unsaved || !content.own;
      opener.delete.hidden = !unsaved && !content.own;
      if ("asking" in changes) showAsked(changes.asking);
      if ("drafts" in changes) showDrafts(changes.drafts);
    },
  };
}
