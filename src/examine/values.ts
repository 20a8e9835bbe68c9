import { wholeFile } from '../project/frontmatter.ts';
import type { Commons } from '../project/model.ts';
import { digestOf } from '../project/source.ts';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';
import { entriesOf, type YamlNode } from '../project/yaml/yaml-node.ts';
import { readYaml } from '../project/yaml/yaml-tree.ts';
import type { Examination } from './study.ts';

/** The settings by their keys; where something else is named by one, it follows from that key alone. */
export function settingsIn({ files }: WorkspaceTexts): Examination['values'] {
  const file = files.get('site.yaml');
  const root = file && readYaml(wholeFile(file)).root;
  const digestNode = nodeDigests();
  return Object.fromEntries(
    entriesOf(root).map(({ key, value }) => [`site.${key.text}`, digestNode(value)] as const),
  );
}

/** The shared values, and which there are of each kind. */
export function sharedIn({ shared }: Commons): Examination['values'] {
  const digestNode = nodeDigests();
  const sections = Object.entries(shared.values).flatMap(([section, values]) => [
    [`shared.${section}`, digestOf([...values.keys()])] as const,
    ...[...values].map(([key, { name, value }]) => {
      const unit = shared.units.get(name.at.file) ?? '';
      return [`shared.${section}.${key}`, digestOf([unit, digestNode(value)])] as const;
    }),
  ]);
  return Object.fromEntries(sections);
}

/** Digests of what YAML says, wherever it stands; a value that is named in several places is looked at once. */
function nodeDigests(): (node: YamlNode) => string {
  const known = new Map<YamlNode, string>();
  const look = (node: YamlNode): string => {
    const digest = known.get(node) ?? digestOf(partsOf(node));
    known.set(node, digest);
    return digest;
  };
  const partsOf = (node: YamlNode): readonly string[] => {
    switch (node.kind) {
      case 'text':
        return ['text', node.text];
      case 'map':
        return ['map', ...node.entries.flatMap(({ key, value }) => [key.text, look(value)])];
      case 'list':
        return ['list', ...node.items.map(look)];
      case 'nothing':
        return ['nothing'];
    }
  };
  return look;
}
