import { type AstNode, inject, type ValidationAcceptor } from "langium";
import { createDefaultModule, createDefaultSharedModule, startLanguageServer } from "langium/lsp";
import { NodeFileSystem } from "langium/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { JournalGeneratedSharedModule, JournalPeerGeneratedModule } from "./generated/module.js";

/** The workbench's language server for the journal grammar, with the bounds that every peer of the bench checks. */
const connection = createConnection(ProposedFeatures.all);
const shared = inject(
  createDefaultSharedModule({ connection, ...NodeFileSystem }),
  JournalGeneratedSharedModule,
);
const services = inject(createDefaultModule({ shared }), JournalPeerGeneratedModule);
shared.ServiceRegistry.register(services);

const bounds: Record<string, readonly [number, number]> = {
  out: [0, 160],
  setback: [0, 300],
  depth: [0, 999],
  temp: [31, 90],
  speed: [0, 25],
  bottom: [0, 999],
  course: [0, 360],
};

/** A measured item of the generated syntax tree. */
interface MeasureNode extends AstNode {
  word: string;
  value: number;
}

services.validation.ValidationRegistry.register({
  Measure(node: MeasureNode, accept: ValidationAcceptor) {
    const range = bounds[node.word];
    if (range && (node.value < range[0] || node.value > range[1]))
      accept("error", `${node.word} ${node.value} is outside ${range[0]} to ${range[1]}`, {
        node,
        property: "value",
      });
  },
} as never);

startLanguageServer(shared);
