// What is drawn is put aside in the browser at once and sent to the season a moment later; a closed tab loses nothing.
const SEND_MS = 1500;
const MOST_MS = 10_000; // while she draws without a pause
const AGAIN_MS = 6000;

export class Keeping {
  // `fields` gives what there is to keep; `says` is told how it stands; `clash` is asked when somebody else was there.
  constructor({ address, place, token, known, fields, says, kept, clash }) {
    Object.assign(this, { address, token, known, fields, says, kept, clash });
    this.shelf = `loopwright-chart:${place}`;
    this.version = null;
    this.turn = 0;
    this.sent = 0;
    addEventListener("pagehide", () => this.leave());
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && this.leave());
    document.addEventListener("submit", (event) => this.beforeForm(event));
  }

  get open() {
    return this.turn !== this.sent;
  }

  // What was put aside when a page was closed before it could be sent, if it is still open.
  found() {
    try {
      return JSON.parse(localStorage.getItem(this.shelf));
    } catch {
      return null;
    }
  }

  forget() {
    localStorage.removeItem(this.shelf);
  }

  changed() {
    this.turn += 1;
    this.says("not kept yet");
    this.putAside();
    this.openSince ??= Date.now();
    this.later(Math.max(0, Math.min(SEND_MS, this.openSince + MOST_MS - Date.now())));
  }

  later(ms) {
    clearTimeout(this.sendLater);
    this.sendLater = setTimeout(() => this.send(), ms);
  }

  // At once, step by step: what is put aside only while a page is being left may not reach the browser's store.
  putAside() {
    if (!this.open) return;
    try {
      localStorage.setItem(this.shelf, JSON.stringify({ known: this.known, at: Date.now(), fields: this.fields() }));
    } catch {
      this.says("this browser has no room to put the drawing aside");
    }
  }

  leave() {
    if (this.open) this.send({ keepalive: true });
  }

  async send({ keepalive = false } = {}) {
    clearTimeout(this.sendLater);
    if (!this.open || this.stopped) return;
    if (this.sending) {
      await this.sending;
      if (this.open) await this.send();
      return;
    }
    const turn = this.turn;
    this.sending = this.post(turn, keepalive);
    await this.sending;
    this.sending = null;
  }

  async post(turn, keepalive) {
    const body = JSON.stringify({ ...this.fields(), known: this.known, version: this.version });
    let answer;
    try {
      answer = await fetch(this.address, {
        method: "POST",
        headers: { "Content-Type": "application/json", "X-CSRFToken": this.token },
        body,
        keepalive: keepalive && body.length < 60_000, // browsers send no more than 64 kB from a page that is left
      });
    } catch {
      this.says("not reached: it is safe in this browser and will be sent again");
      this.later(AGAIN_MS);
      return;
    }
    const told = await answer.json().catch(() => ({ faults: [`the answer was ${answer.status}`] }));
    if (answer.ok) {
      this.known = told.known;
      this.version = told.version;
      this.sent = turn;
      this.openSince = this.open ? Date.now() : null;
      if (this.open) {
        this.putAside(); // once more, as drawn over what is kept now
        this.later(SEND_MS);
      } else this.forget();
      this.says(this.open ? "not kept yet" : "kept");
      this.kept();
    } else if (told.meanwhile) {
      this.stopped = true;
      this.clash(told);
    } else {
      this.says(`not kept: ${(told.faults ?? []).join("; ")}`);
    }
  }

  // Goes on over what somebody else has drawn meanwhile.
  insist(known) {
    this.known = known;
    this.stopped = false;
    this.later(0);
  }

  // A form of the page waits until the drawing is sent, then goes its own way by the button that was pressed.
  async beforeForm(event) {
    const { target, submitter } = event;
    if (!this.open || target === this.through || event.defaultPrevented || target.dataset.size !== undefined) return;
    event.preventDefault();
    await this.send();
    this.through = target;
    target.requestSubmit(submitter);
  }
}
