import { describe, expect, test } from 'vitest';
import { commands } from '../../../commands/registry.ts';
import { changeable, formOf } from '../form.ts';
import { limits } from '../limits.ts';
import { filled, modalOf } from './modal.ts';

interface Label {
  readonly label: string;
  readonly description: string;
  readonly component: { readonly value?: string; readonly placeholder?: string; readonly max_length: number };
}

describe('a form', () => {
  test.each(commands.map((command) => [command.name, command] as const))('of %s keeps the limits', (_name, command) => {
    const names = changeable(command, {});
    const given = Object.fromEntries(names.map((name) => [name, 'x'.repeat(5000)]));
    const { title, components } = modalOf({ id: 't1:c:x:', command, names, given });
    expect(title.length).toBeLessThanOrEqual(limits.modalTitle);
    expect(components.length).toBeLessThanOrEqual(limits.modalInputs);
    for (const { label, description, component } of components as Label[]) {
      expect(label.length).toBeLessThanOrEqual(limits.inputLabel);
      expect(description.length).toBeLessThanOrEqual(limits.inputDescription);
      expect(component.value?.length).toBeLessThanOrEqual(component.max_length);
      expect(component.placeholder?.length ?? 0).toBeLessThanOrEqual(limits.placeholder);
    }
  });

  test('of a wall has a line a layer, and reads them back hot side first', () => {
    const command = commands.find(({ name }) => name === 'wall')!;
    const [subject = ''] = formOf(command) ?? [];
    const given = { [subject]: '1 in castable; 2.5 in perlite' };
    const { components } = modalOf({ id: 't1:f:wall:', command, names: [subject], given });
    expect((components as Label[])[0]?.component.value).toBe('1 in castable\n2.5 in perlite');
    expect(filled({ layers: '1 in castable\n\n 2.5 in perlite; \n', hot: ' ' })).toEqual({
      layers: '1 in castable; 2.5 in perlite',
    });
  });

  test('to change an answer begins with what was given', () => {
    const command = commands.find(({ name }) => name === 'mix')!;
    expect(changeable(command, { metal: 'bronze', amount: '30 L' }).slice(0, 2)).toEqual(['amount', 'metal']);
  });
});
