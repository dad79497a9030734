// Colours as people see them who lack one kind of cone.
import { channels, coded, linear } from './contrast.js';

type Matrix = readonly [readonly number[], readonly number[], readonly number[]];

/**
 * For linear light, severity 1: Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency", IEEE TVCG 15 (2009), doi 10.1109/TVCG.2009.113.
 */
export const deficiencies = {
  protan: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
  deutan: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
  tritan: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
} as const satisfies Record<string, Matrix>;

export type Deficiency = keyof typeof deficiencies;

/** "#rrggbb" as it is seen. */
export function seenBy(deficiency: Deficiency, hex: string): string {
  const light = channels(hex).map((c) => linear(c / 255));
  return `#${deficiencies[deficiency].map((row) => {
    const sum = row.reduce((s, m, i) => s + m * light[i]!, 0);
    return Math.round(255 * coded(Math.min(1, Math.max(0, sum)))).toString(16).padStart(2, '0');
  }).join('')}`;
}
