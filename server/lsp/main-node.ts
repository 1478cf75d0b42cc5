/** The entry in Node. What takes memory and time is set first; the server itself is loaded after that. */
import v8 from "node:v8";

void import("./serve-node.ts").then(({ serve }) => {
  // Loading has grown the space for young objects to 4 MB, about what one key makes; it stays so. The first check of a
  // long file would have it grow to many times that, and it is never given back.
  v8.setFlagsFromString("--semi-space-growth-factor=1");
  // Collecting earlier: what checking a thousand trips leaves behind would else be kept as room to grow.
  v8.setFlagsFromString("--heap-growing-percent=30");
  serve();
});
