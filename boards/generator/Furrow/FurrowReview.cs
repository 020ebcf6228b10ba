using System.Globalization;
using CopperPath.DemoBoards.Writing;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>What a review of the card is asked: which stretches carry which currents between which parts.</summary>
public static class FurrowReview
{
    private static readonly int[] _phases = [1, 2, 3, 4];

    /// <summary>
    /// The converters as the brief describes them. The efficiencies are those that give the shares of time behind the
    /// currents in <see cref="Duty"/>: 0.9 V / (0.9 x 12 V) = 1/12, and 16.5 W out of 18 W.
    /// </summary>
    private static readonly string[] _converters =
    [
        "converters:",
        "  - name: core",
        "    input voltage: 12 V",
        "    output voltage: 0.9 V",
        "    load current: 90 A",
        "    phases: 4",
        "    switching frequency: 500 kHz",
        "    inductance: 0.22 uH",
        "    efficiency: 0.9",
        "    edge time: 5 ns",
        "    low-side switches: 2",
        "    input capacitors: [{ count: 20, value: 10 uF, esr: 3 mohm }, { count: 5, value: 270 uF, esr: 12 mohm }]",
        "    output capacitors: [{ count: 33, value: 22 uF, esr: 3 mohm }, { count: 8, value: 470 uF, esr: 6 mohm }]",
        "    connector: { pins: 3, rating: 9 A }",
        "  - name: 5 V",
        "    input voltage: 12 V",
        "    output voltage: 5 V",
        "    load current: 3.3 A",
        "    phases: 1",
        "    switching frequency: 500 kHz",
        "    inductance: 4.7 uH",
        "    efficiency: 0.9167",
        "    edge time: 5 ns",
        "    input capacitors: { count: 2, value: 10 uF, esr: 3 mohm }",
        "    output capacitors: { count: 2, value: 22 uF, esr: 3 mohm }",
    ];

    /// <summary>
    /// Surroundings, limits, cooling and converters. A film of 14 W/m2K is that of air at 2 m/s along 150 mm of plate, laminar:
    /// Nu = 0.664 Re^(1/2) Pr^(1/3) (Pohlhausen; from memory).
    /// </summary>
    /// <param name="load">The place of the load, which stands under a sink of its own, as the brief says it.</param>
    public static IReadOnlyList<string> Conditions(string load) =>
    [
        "ambient: 45 degC",
        "limits:",
        "  # 45 degC of air and 45 K from the parts leave 15 K before capacitors of 105 degC are at their rating.",
        "  temperature rise: 15 K",
        "  voltage drop: 50 mV",
        "  switch node area ratio: 2",
        "  plane slot length: 8 mm",
        "thermal:",
        "  # A fan drives air along the card at 2 m/s.",
        "  top: { film: 14 W/m2K }",
        "  bottom: { film: 14 W/m2K }",
        "  losses:",
        $"    - {{ name: accelerator, {load}, power: 81 W, to air: 0.4 K/W }}",
        .. _converters,
    ];

    public static IReadOnlyList<BriefNet> Nets() =>
    [
        new("Feed, connector to fuse", Furrow.Nets.SupplyIn, "feed",
            [Enters("connector", Duty.Feed, "J1.1", "J1.2", "J1.3"), Rest("fuse", "F1.1")]),
        new("Feed, fuse to choke", Furrow.Nets.SupplyFused, "feed", [Enters("fuse", Duty.Feed, "F1.2"), Rest("choke", "L6.1")]),
        new("Feed return, choke to connector", Furrow.Nets.ReturnIn, "feed",
            [Enters("choke", Duty.Feed, "L6.2"), Rest("connector", "J1.4", "J1.5", "J1.6")]),
        new("12 V, choke to the converters", Furrow.Nets.Supply, "feed",
        [
            Enters("choke", Duty.Feed, "L6.4"),
            .. _phases.Select(n => Leaves($"phase {n} high side", Duty.HighSide, $"Q{n}1.5")),
            Rest("5 V converter", "U3.7", "U3.8"),
        ]),
        new("12 V, switched current of the phases (RMS)", Furrow.Nets.Supply, "input",
        [
            .. _phases.Select(n => Enters($"phase {n} input capacitors", Duty.CapacitorRms, InputCapacitors(n, 1))),
            .. _phases.Select(n => Leaves($"phase {n} high side", Duty.CapacitorRms, $"Q{n}1.5")),
        ])
        {
            IsAlternating = true,
        },
        .. _phases.Select(n => new BriefNet(
            $"Switch node {n}", Furrow.Nets.Switch(n), "switch node",
            [
                Enters("low side", Duty.LowSide, $"Q{n}2.5", $"Q{n}3.5") with { IsSpread = true },
                Enters("high side", Duty.HighSide, $"Q{n}1.1"),
                Rest("inductor", $"L{n}.1"),
            ],
            "core phases")),
        new("Core supply", Furrow.Nets.Core, "output",
        [
            .. _phases.Select(n => Enters($"inductor {n}", Duty.Phase, $"L{n}.2")),
            Rest("load", "U1") with { IsSpread = true },
        ]),
        new("Ground return", Furrow.Nets.Ground, "return",
        [
            Enters("load", Duty.Load, "U1") with { IsSpread = true },
            Enters("5 V load", Duty.FiveVolt, "J2.2"),
            .. _phases.Select(n => Leaves($"phase {n} low side", Duty.LowSide, $"Q{n}2.1", $"Q{n}3.1") with { IsSpread = true }),
            Leaves("5 V converter", Duty.FiveVolt - Duty.FiveVoltInput, "U3.9"),
            Rest("choke", "L6.3"),
        ]),
        new("5 V switch node", Furrow.Nets.FiveVoltSwitch, "switch node",
            [Enters("converter", Duty.FiveVolt, "U3.1", "U3.2"), Rest("inductor", "L5.1")]),
        new("5 V output", Furrow.Nets.FiveVolt, "output", [Enters("inductor", Duty.FiveVolt, "L5.2"), Rest("connector", "J2.1")]),
    ];

    private static string[] InputCapacitors(int phase, int pin) =>
        [.. Enumerable.Range(1, Phase.InputCapacitors).Select(i => string.Create(CultureInfo.InvariantCulture, $"C{phase}{i:00}.{pin}"))];

    private static BriefTerminal Enters(string name, double currentA, params string[] contacts) =>
        new(name, contacts, string.Create(CultureInfo.InvariantCulture, $"enters: {currentA} A"));

    private static BriefTerminal Leaves(string name, double currentA, params string[] contacts) =>
        new(name, contacts, string.Create(CultureInfo.InvariantCulture, $"leaves: {currentA} A"));

    private static BriefTerminal Rest(string name, params string[] contacts) => new(name, contacts, "takes: rest");
}
