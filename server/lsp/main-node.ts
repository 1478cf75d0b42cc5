/** The entry in Node. */
import { useOurSettings } from "../files/engine-settings.ts";

void import("./serve-node.ts").then(({ serve }) => {
  useOurSettings();
  serve();
});
