using CopperPath.Brief;

namespace CopperPath.Core.Tests.Brief;

/// <summary>A brief that uses every key of the format once, and small pieces to build faulty ones from.</summary>
internal static class ExampleBrief
{
    public const string Full = """
        # yaml-language-server: $schema=brief.schema.json
        copperpath: 1
        board:
          name: Furrow compute card
          revision: A
          files: revision-a/x2
          layers:
            - { file: foo.gbr, role: copper, number: 2 }
            - { file: outline.gbr, role: profile }
          drill format: { file: foo.txt, unit: inch, integer digits: 2, decimal digits: 5, zeros: leading omitted }
        stackup:
          copper: [2 oz, 35 um, 35 um, 70 um]
          dielectric: [0.2 mm, 1.0 mm, 0.2 mm]
          plating: 25 um
          hole diameters: drilled
          solder on exposed copper: 50 um
          solder alloy: tin-lead
        ambient: 45 degC
        conductor temperature: 65 degC
        accuracy: 0.5 %
        limits:
          temperature rise: 30 K
          voltage drop: 50 mV
          temperature: 125 degC
          judge by: ipc-2221
          switch node area ratio: 1.5
          plane slot length: 6 mm
          sharing ratio: 3
          least area ratio: 5
          sensitive distance: 3 mm
          capacitor vias: 4
          capacitor distance ratio: 6
          bank drop: 20 mV
          hot loop ratio: 1.5
        thermal:
          orientation: vertical
          top: { film: 12 W/m2K, emissivity: 0.8 }
          bottom: { film: 8 W/m2K, emissivity: 0.1 }
          laminate: { through: 0.35 W/mK, in plane: 0.9 W/mK, below: 0.1 mm }
          cell: 0.4 mm
          losses:
            - { name: Q1, component: Q1, power: 1.2 W }
            - { name: coil, rectangle: { layer: top, from: [1 mm, 2 mm], to: [3 mm, 4 mm] }, power: 300 mW }
          heat sinks:
            - { name: bolt, circle: { layer: bottom, x: 1 mm, y: 2 mm, diameter: 3 mm }, temperature: 50 degC, resistance: 5 K/W }
        nets:
          - name: Feed, connector to fuse
            net: 12V_RAW
            role: feed
            siblings: core phases
            limits: { voltage drop: 20 mV, temperature rise: 10 K }
            terminals:
              - name: connector
                pins: [J1.1, J1.2, J1.A4.x]
                enters: 9 A
                contact: joined
              - name: load
                component: U1
                takes: rest
                contact: spread
          - name: By point
            at: { layer: top, x: 12.4 mm, y: -33.1 mm }
            role: switch node
            terminals:
              - name: x1
                pads: [ { layer: top, x: 1 mm, y: 2 mm } ]
                enters: 4 A
                contact: joined
              - name: x2
                pads in: { layer: top, from: [3 mm, 2 mm], to: [1 mm, 4 mm] }
                leaves: 1 A
                contact: joined
              - name: x3
                holes: [ { x: 1 mm, y: 2 mm }, { x: 100 mil, y: 1 in } ]
                leaves: 1 A
                contact: joined
              - name: x4
                rectangle: { layer: bottom, from: [1 mm, 2 mm], to: [3 mm, 4 mm] }
                leaves: 1 A
                contact: joined
              - name: x5
                circle: { layer: 2, x: 1 mm, y: 2 mm, diameter: 3 mm }
                leaves: 1 A
                contact: joined
        load profile:
          points: [[0 s, 1], [1 s, 1], [1 s, 0.5]]
          stretches: { stretch: By point, points: [[0 s, 4 A], [2 s, 1 A]] }
          period: 10 s
          parts exponent: 1.5
        faults:
          - { name: short, stretch: By point, current: 200 A, time: 10 ms, limit: 150 degC }
          - { name: inrush, stretch: By point, capacitance: 1000 uF, voltage: 12 V, ramp: 5 ms, limit: 130 degC }
        """;

    public const string Head = """
        copperpath: 1
        board: { name: b, files: f }
        ambient: 25 degC
        limits: { temperature rise: 20 K }

        """;

    public const string Net = """
        nets:
          - name: n
            net: N
            terminals:
              - { name: a, pins: [J1.1], enters: 1 A }
              - { name: b, component: U1, leaves: 1 A }
        """;

    /// <summary>The reading of a brief with the given terminals, the first on line 9, and nothing else unusual.</summary>
    public static BriefReading ReadTerminals(params string[] terminals) => BriefReader.Read("b.yaml",
        Head + "nets:\n  - name: n\n    net: N\n    terminals:\n"
        + string.Concat(terminals.Select(terminal => $"      - {{ {terminal} }}\n")));
}
