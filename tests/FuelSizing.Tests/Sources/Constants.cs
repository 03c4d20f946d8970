using static FuelSizing.Tests.Sources.Obtained;

namespace FuelSizing.Tests.Sources;

/// <summary>
/// The register of constants: every constant and every ready-made description of the folders that hold physics (<see cref="Folders"/>), by its
/// name, with its source and class; and the sources that the equations name. What is missing, or no longer there, fails a test.
/// </summary>
internal static class Constants
{
    /// <summary>Whose constants have a row each. Elsewhere constants are tolerances, steps and limits of methods: our own choice.</summary>
    public static readonly string[] Folders = ["Equations", "Fuels", "Engines", "Injectors", "Regulators", "Lines", "Electrical", "Points"];

    private const string Definition = "definition or arithmetic";
    private const string Crane = "Crane Co., Flow of Fluids, Technical Paper 410 (1976), as reprinted in Ludwig, Applied Process Design for Chemical and Petrochemical Plants, volume 1, 3rd edition, page 76";
    private const string White = "F. M. White, Fluid Mechanics, table 6.1";
    private const string Perry = "Perry's Chemical Engineers' Handbook, 8th edition, ISBN 978-0-07-142294-9, table 2-313";
    private const string Poling = "B. E. Poling, J. M. Prausnitz and J. P. O'Connell, The Properties of Gases and Liquids, 5th edition, ISBN 978-0-07-011682-5, appendix A";
    private const string Iupac = "IUPAC, abridged standard atomic weights (2021)";
    private const string Atmosphere = "ISO 2533:1975, Standard atmosphere";
    private const string Bound = "bound of an input or a table's scale";

    /// <summary>Type and member, source, class.</summary>
    public static IReadOnlyList<(string Member, string Source, Obtained Obtained)> All { get; } =
    [
        ("WireResistance.ReferenceCelsius", "IEC 60028: resistivity is stated at 20 °C", Recalled),
        ("Compression.Exponent", Definition, Derived),
        ("BeltDrivenBoost.MinimumRatio", Bound, Chosen),
        ("BeltDrivenBoost.MaximumRatio", Bound, Chosen),
        ("BeltDrivenBoost.Slowest", Bound, Chosen),
        ("BeltDrivenBoost.Fastest", Bound, Chosen),
        ("EngineSpeed.Fastest", Bound, Chosen),
        ("HumidAir.CelsiusZero", Definition, Derived),
        ("StandardAir.GasConstant", Atmosphere, Recalled),
        ("StandardAir.HeatCapacityRatio", Atmosphere, Recalled),
        ("StandardAir.HeatCapacity", Definition, Derived),
        ("StandardAir.SeaLevelPressure", Atmosphere, Recalled),
        ("StandardAir.SeaLevelTemperature", Atmosphere, Recalled),
        ("StandardAir.LapseRate", Atmosphere, Recalled),
        ("StandardAir.Gravity", "standard acceleration of free fall, CGPM 1901", Recalled),
        ("PowerCorrectionFactor.ReferenceDryPressure", "ISO 1585 and SAE J1349", Recalled),
        ("PowerCorrectionFactor.ReferenceTemperature", "ISO 1585 and SAE J1349", Recalled),
        ("VapourPressure.PascalsPerPsi", Definition, Derived),
        ("VapourPressure.RootOfDistillationSlope", "US EPA, AP-42, figure 7.1-15: √3 is the root of the slope of 3 °F/% that it takes for petrol", Recalled),
        ("Combustion.MolarMassCarbon", Iupac, Recalled),
        ("Combustion.MolarMassHydrogen", Iupac, Recalled),
        ("Combustion.MolarMassOxygen", Iupac, Recalled),
        ("Combustion.OxygenMassFractionOfAir", "0.2095 by volume in air of 28.96 g/mol", Derived),
        ("FuelDensity.ReferenceTemperature", "ASTM D1250-80: 15 °C", Transcribed),
        ("FuelDensity.PetrolTransition", "ASTM D1250-80, table 54B, as transcribed in Zubastic120993/fuel_mcp", Transcribed),
        ("PipeFriction.LaminarNumber", "Hagen–Poiseuille: f Re = 64", Derived),
        ("PipeFriction.TurbulenceOnset", "K. Avila and others, Science 333 (2011) 192, doi 10.1126/science.1203223", Transcribed),
        ("PipeFriction.TurbulenceComplete", "lower end of the Moody chart", Recalled),
        ("ColebrookWhite.Ln10", Definition, Derived),
        ("FittingLoss.ReferenceRoughness", "Crane Co., Technical Paper 410: clean commercial steel pipe, 0.0018 in", Transcribed),
        ("Fuel.MaximumOxygenOfPetrol", "EN 228 ends at 3.7 % oxygen by mass", Recalled),
        ("Fuel.SummerReidPressure", "EN 228, summer class A, upper limit", Recalled),
        ("Fuel.Petrol", "Works.Heywood for composition and heating value; EN 228 for density; Works.CengelBolesFuels for the heat of vaporisation", Recalled),
        ("Fuel.Ethanol", "Works.Heywood, Works.OimlR22; Works.CengelBolesFuels for the heat of vaporisation", Recalled),
        ("Fuel.Methanol", "Works.Heywood, Works.DeReuck; Works.CengelBolesFuels for the heat of vaporisation", Recalled),
        ("SpecificHeat.Petrol", "R. E. Sonntag, C. Borgnakke and G. J. Van Wylen, Fundamentals of Thermodynamics, 5th edition, gasoline, 25 °C, as transcribed by amesweb.info", Transcribed),
        ("SpecificHeat.Ethanol", "Y. A. Çengel and M. A. Boles, Thermodynamics, 8th edition, table A-27, ethanol, as transcribed on scribd.com (common-fuel-properties)", Transcribed),
        ("SpecificHeat.Methanol", "Y. A. Çengel and M. A. Boles, Thermodynamics, 8th edition, table A-27, methanol, as transcribed on scribd.com (common-fuel-properties)", Transcribed),
        ("Fuel.SummerEthanolReidPressure", "ASTM D5798-15, class 1, upper limit", Recalled),
        ("BlendVapour.Allowance", "chosen: about what two laboratories measure differently; at 5 % ethanol the fit is 1.4 kPa over the agency's own factor for mixed tanks", Chosen),
        ("BlendVapour.EthanolReidPressure", "US EPA, Motor Vehicle Emission Simulator, TankFuelGenerator: 2.3 psi", Read),
        ("BlendVapour.ReidKelvins", Definition, Derived),
        ("BlendVapour.MinimumReidPressure", Bound, Chosen),
        ("Fuel.E10", Definition, Derived),
        ("Fuel.E85", Definition, Derived),
        ("Fuel.MinimumTemperature", Bound, Chosen),
        ("Fuel.MaximumTemperature", Bound, Chosen),
        ("EthanolBlend.Tolerance", Bound, Chosen),
        ("VapourLaw.Ln10", Definition, Derived),
        ("VapourLaw.Ethanol", Poling, Recalled),
        ("VapourLaw.Methanol", Poling, Recalled),
        ("ViscosityLaw.Ethanol", Perry, Recalled),
        ("ViscosityLaw.Methanol", Perry, Recalled),
        ("FuelDemandModel.Hair", Bound, Chosen),
        ("EngineSpeed.Slowest", Bound, Chosen),
        ("Induction.NaturallyAspirated", Definition, Derived),
        ("ManifoldPressure.Minimum", Bound, Chosen),
        ("ManifoldPressure.Maximum", Bound, Chosen),
        ("ManifoldPressure.MinimumAbsolute", Bound, Chosen),
        ("Atmosphere.Standard", Atmosphere, Recalled),
        ("FuelConsumption.MaximumPlausibleEfficiency", "38 % at full load", CommonPractice),
        ("Injector.DefaultRatedDifferential", "300 kPa", CommonPractice),
        ("MeasuredFlows.MinimumShare", Bound, Chosen),
        ("MeasuredFlows.MaximumShare", Bound, Chosen),
        ("Injector.DefaultMinimumShare", "a third of the rated pressure", CommonPractice),
        ("TestFluid.Heptane", "R. Span and W. Wagner, equation of state of n-heptane, 20 °C", Recalled),
        ("DutyCycle.DefaultLimit", "80 to 85 %", CommonPractice),
        ("Filter.MaximumOverRating", "up to about twice the rated flow, trusted to three times", CommonPractice),
        ("Fitting.Elbow90", Crane, Transcribed),
        ("Fitting.Elbow45", Crane, Transcribed),
        ("Fitting.Bend90", Crane, Transcribed),
        ("Fitting.TeeThrough", Crane, Transcribed),
        ("Fitting.TeeBranch", Crane, Transcribed),
        ("Fitting.Entrance", Crane, Transcribed),
        ("Fitting.ProjectingEntrance", Crane, Transcribed),
        ("Fitting.Exit", Crane, Transcribed),
        ("Roughness.DrawnTube", White, Recalled),
        ("Roughness.PlasticTube", White, Recalled),
        ("Roughness.StainlessTube", White, Recalled),
        ("Roughness.RubberHose", White, Recalled),
        ("AmpacityTable.AmbientCelsius", "33 CFR 183.425, table 5", Read),
        ("AmpacityTable.Ratings", "33 CFR 183.425, table 5", Read),
        ("AmpacityTable.Rows", "33 CFR 183.425, table 5", Read),
        ("Conductor.DefaultLay", "ASTM B496; NEC, chapter 9, table 8, stranded rows", Transcribed),
        ("ConductorMaterial.Copper", "IEC 60028, International Annealed Copper Standard", Recalled),
        ("ConductorMaterial.Aluminium", "Industrial Power Engineering and Applications Handbook, metals for current carrying", Recalled),
        ("Contact.DefaultJoint", "1 mΩ", CommonPractice),
        ("Contact.DefaultFuse", "5 mΩ", CommonPractice),
        ("Contact.DefaultRelay", "5 mΩ", CommonPractice),
        ("Contact.DefaultSwitch", "10 mΩ", CommonPractice),
        ("FuseChoice._ratings", "ISO 8820-3, type C", Recalled),
        ("FuseChoice.StandardRatings", "ISO 8820-3, type C", Recalled),
        ("FuseChoice.MaximumLoad", "80 % of the rating", CommonPractice),
        ("StandardSizes.Awg", "the gauge's numbers in common sale", Chosen),
        ("StandardSizes.Metric", "IEC 60228, class 5", Transcribed),
        ("MetricSizes.All", "IEC 60228, class 5, plain copper, highest resistance, as transcribed by mycableengineering.com and etechnik-synergie.com", Transcribed),
        ("MetricSizes.MaximumOhmSquareMetresPerMetre", Definition, Derived),
        ("SizingLimits.Default", "85 %, 10 %, 5 %, 10 kPa", CommonPractice),
        ("Conditions.Default", "13.5 V from a charging alternator", CommonPractice),
        ("PointKernel.EndTolerance", Bound, Chosen),
        ("RegulatorFlow.Constant", "no slope, no hysteresis, no share", Chosen),
        ("RegulatorFlow.Unbounded", Bound, Chosen),
        ("RisingRate.MinimumGain", Bound, Chosen),
        ("RisingRate.MaximumGain", Bound, Chosen),
        ("MixtureCause.Nothing", Bound, Chosen),
        ("MixtureSolver.SameFlow", Bound, Chosen),
    ];

    /// <summary>
    /// How the sources that stand beside the equations begin, and of what class they are. Literals within an equation are of its source:
    /// K0 and K1 of table 54B, the 1.18 of SAE J1349, Sonntag's coefficients.
    /// </summary>
    public static IReadOnlyList<(string Begins, Obtained Obtained)> EquationSources { get; } =
    [
        ("definition of the gain over base pressure; common practice, no source", CommonPractice),
        ("common practice, no source", CommonPractice),
        ("Heywood, Internal Combustion Engine Fundamentals, ch. 13", Recalled),
        ("back-EMF of a motor", Derived),
        ("shape: Perry's", Recalled),
        ("definition", Derived),
        ("derived", Derived),
        ("geometry", Derived),
        ("conservation of", Derived),
        ("balance of", Derived),
        ("energy balance", Derived),
        ("affinity laws", Derived),
        ("isentropic relation", Derived),
        ("ideal gas law", Derived),
        ("hydrostatics", Derived),
        ("Darcy–Weisbach", Derived),
        ("Dalton's law", Derived),
        ("Ohm's", Derived),
        ("Kirchhoff's", Derived),
        ("Joule's law", Derived),
        ("Th. von Kármán", Derived),
        ("f = 64/Re below Re 2040", Chosen),
        ("US EPA, AP-42", Recalled),
        ("ISO 2533:1975", Recalled),
        ("ISO 1585", Recalled),
        ("SAE J1349", Recalled),
        ("World Meteorological Organization, Guide", Recalled),
        ("R. H. Perry and D. W. Green", Recalled),
        ("Ch. Antoine", Recalled),
        ("IEC 60028", Recalled),
        ("ASTM B258", Recalled),
        ("ASTM D1250-80", Transcribed),
        ("Crane Co., Technical Paper 410", Transcribed),
        ("C. F. Colebrook", Transcribed),
        ("ethanol, about 1 psi: R. L. McCormick", Read),
        ("US EPA, Motor Vehicle Emission Simulator", Read),
        ("F. P. Incropera", Recalled),
    ];
}
