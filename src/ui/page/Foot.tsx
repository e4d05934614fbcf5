// What stands under everything: whose worksheet it is, what it is good for, which version it is.

import { textOrDate } from "../../graph/shown.ts";
import { useSheet } from "../sheet.ts";

export function Foot() {
  const sheet = useSheet();
  const madeOn = () => textOrDate(sheet.worksheet().made_on, sheet.showOptions().locale);
  return (
    <footer class="foot">
      <p>
        Height nought is {sheet.worksheet().datum || "wherever you choose"}. Made by{" "}
        {sheet.worksheet().made_by || "nobody named"} on {madeOn()}.
      </p>
      <p>
        Everything is worked out on this device; nothing is sent anywhere. Figures are estimates for planning:
        local codes and licensed people decide on wiring, stands, drinking water and backflow.
      </p>
      <p>
        Version {sheet.keep.version}
        {sheet.keep.opens()}.
      </p>
    </footer>
  );
}
