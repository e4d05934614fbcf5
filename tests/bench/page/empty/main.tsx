// A page of the same framework with nothing on it but a number that a key steps: what no page can be quicker than.

import { createSignal } from "solid-js";
import { render } from "solid-js/web";

const page = document.getElementById("page");
if (page) {
  render(() => {
    const [value, setValue] = createSignal(1);
    return (
      <main>
        <h1 class="lead">It is {value()}</h1>
        <input
          class="in-hand-value"
          value={value()}
          onKeyDown={(event) => {
            if (event.key === "ArrowUp") setValue(value() + 1);
          }}
        />
      </main>
    );
  }, page);
}
