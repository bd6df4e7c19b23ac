// What they see: drawn in her window, and in theirs while that is open, with a copy of it in hers.
import { audience, openWindow } from "./audience.js";
import { library, libraryIn } from "./plotly.js";
import { Scene } from "./scene.js";

export class Theirs {
  /**
   * box: where it is seen in her window; key: what hears a key that is pressed in theirs; closed: told when theirs is
   * closed, after the picture has come back.
   */
  constructor(box, model, { key, closed }) {
    Object.assign(this, { box, model, key, closed, other: null });
    this.scene = this.local();
    this.room = new ResizeObserver(() => this.fit());
    this.room.observe(box);
  }

  local() {
    this.box.replaceChildren();
    return new Scene(this.box, library(this.model));
  }

  /** Open their window; returns "refused" by the browser, "there" when it was open, and "opened". */
  open(look, title) {
    const other = openWindow();
    if (!other) return "refused";
    if (this.other === other) return "there";
    this.scene.remove();
    this.other = other;
    this.wear(look);
    this.scene = audience(other, {
      css: this.model.get("_css"),
      library: libraryIn(other, this.model),
      title,
      drawn: (canvas) => this.mirror(canvas),
      closed: () => this.left(),
      key: this.key,
    });
    this.box.replaceChildren();
    return "opened";
  }

  /** Make their window light or dark. */
  wear(look) {
    if (this.other) this.other.document.documentElement.dataset.talkLook = look;
  }

  /** Show her what they see: a copy of the picture itself, once this window has a moment. */
  mirror(canvas) {
    cancelAnimationFrame(this.mirroring);
    this.mirroring = requestAnimationFrame(() => {
      const copy = document.importNode(canvas, true);
      copy.inert = true;
      copy.setAttribute("aria-hidden", "true");
      this.box.replaceChildren(copy);
      this.fit();
    });
  }

  /** Fit the copy to its room; a scene of her own window fits itself. */
  fit() {
    const copy = this.other && this.box.querySelector(".talk-scene");
    if (copy) copy.style.transform = `scale(${this.box.clientWidth / 1920})`;
  }

  left() {
    this.other = null;
    this.scene.remove();
    this.scene = this.local();
    this.closed();
  }
}
