/** The rig of the contract, whole: every pipe that it names, with an end at either side. For tests to spoil. */
export const contractText = `{
  "format": "evenrun-rig", "version": 1,
  "gas": { "gamma": 1.4, "gasConstant": 287.05 },
  "ambient": { "pressure": 101325, "temperature": 293.15 },
  "pipes": [{
    "id": "a", "length": 1.0, "cells": 200,
    "diameter": [[0, 0.04], [1.0, 0.04]],
    "friction": 0,
    "wallTemperature": null,
    "initial": [{ "from": 0, "to": 1.0, "pressure": 101325, "temperature": 293.15, "velocity": 0 }]
  }, {
    "id": "b", "length": 0.5, "cells": 100,
    "diameter": [[0, 0.04], [0.2, 0.05], [0.5, 0.05]],
    "friction": 0.005,
    "wallTemperature": 400,
    "initial": [
      { "from": 0, "to": 0.25, "pressure": 101325, "temperature": 293.15, "velocity": 0 },
      { "from": 0.25, "to": 0.5, "pressure": 150000, "temperature": 350, "velocity": -20 }
    ]
  }, {
    "id": "c", "length": 0.8, "cells": 160,
    "diameter": [[0, 0.04], [0.8, 0.04]],
    "friction": { "roughness": 4e-5 },
    "wallTemperature": null,
    "initial": [{ "from": 0, "to": 0.8, "pressure": 101325, "temperature": 293.15, "velocity": 0 }]
  }],
  "ends": [
    { "kind": "closed",   "at": ["a", "start"] },
    { "kind": "junction", "at": [["a", "finish"], ["b", "start"], ["c", "start"]], "model": "equal-pressure" },
    { "kind": "through",  "at": ["b", "finish"] },
    { "kind": "vessel",   "at": ["c", "finish"], "volume": 5e-4, "pressure": 5e5, "temperature": 1200,
      "area": [[0, 0], [0.002, 4e-4], [0.02, 4e-4]],
      "dischargeCoefficient": 0.8 }
  ],
  "duration": 0.02,
  "courant": 0.8,
  "probes": [{ "pipe": "a", "x": 0.5 }],
  "sample": 1e-5,
  "profile": false
}`;

// biome-ignore lint/suspicious/noExplicitAny: a document is there to be spoiled
export type Loose = any;
export const contractRig = (): Loose => JSON.parse(contractText);

/** The same with everything beyond the contract. */
export function extendedRig(): Loose {
  const rig = contractRig();
  rig.title = 'Everything';
  rig.gas = { components: ['air', 'burnt'] };
  rig.ambient.fractions = { air: 1 };
  rig.pipes[0].note = 'a remark';
  rig.pipes[0].initial[0].fractions = { burnt: 0.5 };
  rig.pipes.push({ ...rig.pipes[0], id: 'd', initial: [{ from: 0, to: 1, pressure: 101325, temperature: 293.15 }] });
  rig.pipes.push({ ...rig.pipes[0], id: 'e' });
  rig.ends[0] = { kind: 'open', at: ['a', 'start'], endCorrection: 'unflanged', area: 1e-3, dischargeCoefficient: 0.9 };
  rig.ends[1].model = 'pressure-loss';
  rig.ends[1].angles = [180, 20, -20];
  rig.ends[2] = {
    kind: 'restriction',
    at: [
      ['b', 'finish'],
      ['d', 'start'],
    ],
    area: 2e-4,
    dischargeCoefficient: 0.7,
  };
  rig.ends[3].fractions = { burnt: 1 };
  rig.ends.push({
    kind: 'junction',
    at: [
      ['d', 'finish'],
      ['e', 'start'],
    ],
    model: 'pressure-loss',
    directions: [
      [1, 0, 0],
      [0, 2, 0],
    ],
  });
  rig.ends.push({ kind: 'open', at: ['e', 'finish'], endCorrection: 0.3 });
  return rig;
}
