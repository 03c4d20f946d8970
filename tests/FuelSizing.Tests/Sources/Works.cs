using static FuelSizing.Tests.Sources.Obtained;

namespace FuelSizing.Tests.Sources;

/// <summary>
/// The register of works that checks compare with. A check names one of these rows, so none can be anonymous or unclassed; the page of
/// published values is written from them.
/// </summary>
internal static class Works
{
    private const string AllCode = "all code";
    private const string Companion = "inputs as transcribed in FOSSEE's Scilab textbook companions (IIT Bombay; repository FOSSEE/Scilab-TBC-Uploads); the book's printed answer was not seen; answer worked by the arithmetic in the test";
    private const string Fluids = "transcribed in the public library CalebBell/fluids, read there";

    // ---- Electrical
    public static readonly Source Floyd = Source.Of(
        Transcribed,
        "T. L. Floyd, Electric Circuit Fundamentals, wire table",
        "transcribed by HyperPhysics, Georgia State University (hyperphysics.phy-astr.gsu.edu, page wirega)",
        "the gauge's formula and the resistivity in the library");

    public static readonly Source NecTable8 = Source.Of(
        Transcribed,
        "NFPA 70, National Electrical Code, chapter 9, table 8, conductor properties",
        "transcribed by sfasoft.com, Conductor Properties",
        "resistivity, lay and temperature coefficient in the library");

    public static readonly Source NecTable8ByHand = Source.Of(
        WorkedApart,
        "NFPA 70, National Electrical Code, chapter 9, table 8, AWG 16 stranded at 75 °C: 4.99 Ω per 1,000 ft",
        "resistance transcribed by sfasoft.com; voltage drop by hand: 4.99 Ω × 200/1,000 × 4 A",
        "resistivity, lay and temperature coefficient in the library");

    public static readonly Source NbsHandbook100 = Source.Of(
        Recalled, "US National Bureau of Standards, Handbook 100, Copper Wire Tables (1966)", "by whom it was transcribed was not kept", "the gauge's formula in the library");

    public static readonly Source AstmB258 = Source.Of(
        Derived, "ASTM B258, standard nominal diameters: the two sizes that define the gauge", "recalled; the formula of the library is built on them", "nothing");

    public static readonly Source Faa4313 = Source.Of(
        Read,
        "US Federal Aviation Administration, AC 43.13-1B, change 1 (2001), page 11-22, tables 11-7 and 11-8",
        "read in the circular's text as posted page by page (landseaskyspace.com/ac4313)",
        "the feed's equations; the wire's resistance goes in as printed, for the circular's wire is tin-plated");

    public static readonly Source CfrBundles = Source.Of(
        Transcribed,
        "33 CFR 183.425, table 5, note 2: correction factors by number of current-carrying conductors",
        "as reprinted from the US Coast Guard's Electrical System Compliance Guideline (delzer.com, page 212); that 183.435(b) applies them was read at codes.findlaw.com",
        "nothing: the library's table is the same five numbers");

    public static readonly Source BundledBoatCable = Source.Of(
        Transcribed,
        "Allowable amperage of boat cable with insulation for 105 °C, of 1 or 2, 3, 4 to 6 and 7 to 24 conductors",
        "a cable maker's table (cableyutai.com.tw, tech-02)",
        "the factors by number of conductors: it prints amperes");

    // ---- Engines and air
    public static readonly Source Stone = Source.Of(
        Recalled, "R. Stone, Introduction to Internal Combustion Engines, chapter 2, exercise", "edition and page not kept", AllCode);

    public static readonly Source GuptaRoots = Source.Of(
        WorkedApart, "H. N. Gupta, Fundamentals of Internal Combustion Engines, example 15.1 (288 K, ratio 1.6, 74 %; mechanical 78 %)", Companion, "the compression's equations");

    public static readonly Source GuptaTest = Source.Of(
        WorkedApart, "H. N. Gupta, Fundamentals of Internal Combustion Engines, example 16.4 (4 cylinders of 60 × 85 mm, 3,000 rev/min, 160 N at 0.35 m, 6.6 L/h)", Companion, AllCode);

    public static readonly Source GuptaBoosted = Source.Of(
        WorkedApart, "H. N. Gupta, Fundamentals of Internal Combustion Engines, example 15.3 (3 L, 4,000 rev/min; brake mean effective pressure 9 bar, indicated efficiency 30 %, mechanical 90 %; boosted 12 bar, 25 %, 91 %)", Companion, AllCode);

    public static readonly Source MathurBoosted = Source.Of(
        WorkedApart, "M. L. Mathur and R. P. Sharma, Internal Combustion Engine, example 17.3 (3.3 L, 4,500 rev/min; brake mean effective pressure 9.3 bar, indicated efficiency 28.5 %, mechanical 90 %; boosted 12.1 bar, 24.8 %, 90 %)", Companion, AllCode);

    public static readonly Source MathurInjection = Source.Of(
        WorkedApart, "M. L. Mathur and R. P. Sharma, Internal Combustion Engine, example 12.1 (6 cylinders, 89 kW, 2,500 rev/min, 245 g/kWh, density 0.84)", Companion, AllCode);

    public static readonly Source EastopEngine = Source.Of(
        WorkedApart, "T. D. Eastop and A. McConkey, Applied Thermodynamics, examples 13.1 and 13.2 (4 cylinders of 57 × 90 mm, 2,800 rev/min, 155 N at 0.356 m, 6.74 L/h, air–fuel ratio 14.5)", Companion, AllCode);

    public static readonly Source EastopCharged = Source.Of(
        WorkedApart, "T. D. Eastop and A. McConkey, Applied Thermodynamics, example 13.3 (3 L, 3,500 rev/min, ratio 1.7, 75 %, 288 K)", Companion, "the compression's equations");

    public static readonly Source GorlaKhan44 = Source.Of(
        WorkedApart, "R. S. R. Gorla and A. A. Khan, Turbomachinery: Design and Theory, example 4.4 (impeller of 1 m, 5,945 rev/min, slip factor 0.90, ratio 2.2, 298 K)", Companion, "the compressor's equations");

    public static readonly Source GorlaKhan417 = Source.Of(
        WorkedApart, "R. S. R. Gorla and A. A. Khan, Turbomachinery: Design and Theory, example 4.17 (17 blades, 475 m/s, power input factor 1.04, 84 %, 288 K)", Companion, "the compressor's equations");

    public static readonly Source GanesanImpeller = Source.Of(
        WorkedApart, "V. Ganesan, Gas Turbines, example 8.1 (impeller of 0.75 m, 11,500 rev/min, slip factor 0.92, ratio 4, 294 K)", Companion, "the compressor's equations");

    public static readonly Source ScheyGove = Source.Of(
        Read,
        "O. W. Schey and W. D. Gove, The effect of supercharger capacity on engine and airplane performance, National Advisory Committee for Aeronautics",
        "abstract read at Cranfield University (naca.central.cranfield.ac.uk, report NID 849): sea-level pressure to 7,000, 11,500, 17,000 and 22,000 ft at drive ratios of 1.615, 1.957, 2.4 and 3; the report itself was not read",
        AllCode);

    public static readonly Source RajputCharged = Source.Of(
        WorkedApart, "R. K. Rajput, Thermal Engineering, example 16.1 (735 kW, 0.350 kg/kWh, air–fuel ratio 12.8, 325 K, ratio 1.6, 70 %, drive 90 %)", Companion, "the compression's equations");

    public static readonly Source Pulkrabek = Source.Of(
        WorkedApart,
        "W. W. Pulkrabek, Engineering Fundamentals of the Internal Combustion Engine, problem 5-7 (6 cylinders, 2.4 L, 3,000 rev/min, 87 %, ethanol at equivalence ratio 1.06, injectors of 0.02 kg/s)",
        "wording transcribed on a public question page, number of the problem recalled; answer worked by the arithmetic in the test",
        AllCode);

    public static readonly Source YoungFreedman = Source.Of(
        Recalled, "H. D. Young and R. A. Freedman, University Physics, 12th edition, chapter 19, turbochargers and intercoolers", "problem recalled, answers by hand", "the compression's equations");

    public static readonly Source CengelBoles = Source.Of(
        Recalled, "Y. A. Çengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 7-15 (285 K, 100 to 800 kPa, 80 %; heat capacity varies)", "from memory", "constant heat capacity");

    public static readonly Source Iso1585 = Source.Of(
        Derived, "ISO 1585 (1992; 2020), spark ignition: (99/p)^1.2 (T/298)^0.6", "formula from memory, public quotations agree; values by another program's powers", "the code, not the formula");

    public static readonly Source SaeJ1349 = Source.Of(
        Derived, "SAE J1349 (June 1990): 1.18 (99/p) (T/298)^0.5 − 0.18", "formula as quoted in public discussions; values by another program's powers", "the code, not the formula");

    public static readonly Source Ashrae = Source.Of(
        Recalled, "ASHRAE Handbook, Fundamentals, table of saturation pressure of water (2005, chapter 6; 2017, chapter 1)", "by whom it was transcribed was not kept", "the short formula of the WMO");

    public static readonly Source Iso2533 = Source.Of(
        Recalled, "ISO 2533:1975, Standard atmosphere, table 5 (geopotential altitude)", "by whom it was transcribed was not kept", "the code, not the standard's formula");

    public static readonly Source Nist811 = Source.Of(
        WorkedApart,
        "NIST Special Publication 811 (2008), appendix B.8",
        "worked from the exact definitions (inch 25.4 mm, pound 0.45359237 kg, free fall 9.80665 m/s², gallon 231 in³); the printed seven figures, recalled, agree",
        "UnitsNet's factors");

    // ---- Fuels
    public static readonly Source Heywood = Source.Of(
        Recalled, "J. B. Heywood, Internal Combustion Engine Fundamentals (1988), ISBN 0-07-028637-X, table D.4", "from memory", "composition and molar masses; not of the heating values, which are the library's own source");

    public static readonly Source Afdc = Source.Of(
        Transcribed, "US Department of Energy, Alternative Fuels Data Center, Properties of Fuels", "transcribed from the agency's page", "Heywood's table and Perry's viscosities");

    public static readonly Source CengelBolesFuels = Source.Of(
        Transcribed,
        "Y. A. Çengel and M. A. Boles, Thermodynamics: An Engineering Approach, table A-27, Properties of some common fuels and hydrocarbons",
        "read as scribd.com/document/490106507 shows the page",
        "the code, not the heats: they are the library's own source");

    public static readonly Source SinnottMethanolWater = Source.Of(
        Transcribed,
        "R. K. Sinnott, Coulson and Richardson's Chemical Engineering, volume 6, Chemical Engineering Design, chapter 8, density of 40 % methanol and water by mass at 20 °C",
        "the example, its ideal value of 903.3 kg/m³ and the measured 934.5 kg/m³ transcribed by holooly.com",
        "the code");

    public static readonly Source NrelHeat = Source.Of(
        Read,
        "National Renewable Energy Laboratory, New analysis methods estimate a critical property of ethanol fuel blends (OSTI 1242469): E50 650 to 700 kJ/kg, petrols 325 to 375 kJ/kg",
        "abstract read at the US Department of Energy's Office of Scientific and Technical Information",
        "the heats of the parts and their mixing by mass");

    public static readonly Source ActiveTables = Source.Of(
        WorkedApart,
        "Active Thermochemical Tables (Argonne National Laboratory), version 1.112, heats of formation at 298.15 K",
        "heats of formation transcribed by the public library chemicals (CalebBell); heating value by the balance in the test",
        "Heywood's heating values");

    public static readonly Source Mpms = Source.Of(
        WorkedApart,
        "ASTM D1250-80, table 54B: K0 346.4228, K1 0.4388",
        "constants transcribed in the public repository Zubastic120993/fuel_mcp (vcf_official_full.py), read there; factor worked by the arithmetic in the test",
        "the code, not the standard's formula");

    public static readonly Source OimlR22 = Source.Of(
        Recalled, "OIML R 22, International alcoholometric tables (1975), 100 % ethanol", "by whom it was transcribed was not kept", "the single expansion coefficient");

    public static readonly Source Schroeder = Source.Of(
        Recalled, "J. A. Schroeder, S. G. Penoncello and J. S. Schroeder, J. Phys. Chem. Ref. Data 43 (2014) 043102, doi 10.1063/1.4895394", "values of the equation of state; by which program was not kept", "Poling's and OIML's constants");

    public static readonly Source DeReuck = Source.Of(
        Recalled, "K. M. de Reuck and R. J. B. Craven, IUPAC International Thermodynamic Tables 12: Methanol (1993)", "values of the equation of state; by which program was not kept", "Poling's constants");

    public static readonly Source SmithVanNess = Source.Of(
        Recalled, "J. M. Smith, H. C. Van Ness and M. M. Abbott, Introduction to Chemical Engineering Thermodynamics, table B.2", "constants from memory", "Poling's constants");

    public static readonly Source Ap42 = Source.Of(
        Recalled, "US EPA, AP-42, fifth edition, volume I, chapter 7.1, table 7.1-2, gasoline", "transcribed in public programs whose names were not kept", "the chart's formula, figure 7.1-15");

    public static readonly Source Mccormick = Source.Of(
        Read,
        "R. L. McCormick and J. Yanowitz, Discussion document: effect of ethanol blending on gasoline RVP, National Renewable Energy Laboratory (2012)",
        "read, as far as its summary: 10 % ethanol adds about 1 psi, and 15 % cannot be told from 10 %",
        "the fit by which blends are computed");

    public static readonly Source EpaMixedTanks = Source.Of(
        Read,
        "US EPA, Motor Vehicle Emission Simulator, TankFuelGenerator, factors for tanks of petrol and E10 mixed",
        "read in the program's text",
        "the fit that the same program has for blends: a table of its own");

    public static readonly Source CengelIron = Source.Of(
        WorkedApart,
        "Y. A. Çengel and A. J. Ghajar, Heat and Mass Transfer, 5th edition, problem 4-15 (base plate of an iron)",
        "statement read; the book's solution, of which the beginning was read, takes the mean loss: worked so by the arithmetic in the test, 51.8 s",
        "the exponential of the lumped capacitance");

    // ---- Flow
    public static readonly Source CengelOrifice = Source.Of(
        Recalled, "Y. A. Çengel and J. M. Cimbala, Fluid Mechanics, example 8-10 (answer 3.09 L/s)", "from memory", "the injector's equation");

    public static readonly Source OrificeLaw = Source.Of(
        Derived, "Square-root law of the orifice equation, √(4/3)", "by hand", "nothing: the same law");

    public static readonly Source PerryFlow = Source.Of(
        WorkedApart,
        "R. H. Perry and D. W. Green, Perry's Chemical Engineers' Handbook, 7th ed., table 2-30, liquid density of n-heptane, and density of ethanol at 20 °C; square root of pressure over density (orifice equation of ISO 5167)",
        "constants transcribed at scribd.com (document 103255190), ethanol's 0.78945 g/mL at chim.lu (ech1658); flow by hand",
        "both densities in the library, and its units");

    public static readonly Source HagenPoiseuille = Source.Of(
        Derived, "Hagen–Poiseuille, Δp = 128 μ L Q/(π d⁴)", "closed form of laminar flow", "the friction factor 64/Re, of which it is the other form");

    public static readonly Source McKeon = Source.Of(
        Transcribed,
        "B. J. McKeon, C. J. Swanson, M. V. Zagarola, R. J. Donnelly and A. J. Smits, J. Fluid Mech. 511 (2004) 41, doi 10.1017/S0022112004009796",
        Fluids,
        "Colebrook–White and 64/Re: measured");

    public static readonly Source FluidsTests = Source.Of(
        Transcribed, "CalebBell/fluids, tests/test_friction.py", "results of an independent program, read in its tests", "the solution of Colebrook–White in two fixed steps");

    public static readonly Source Crane713 = Source.Of(
        Transcribed, "Crane Co., Flow of Fluids, Technical Paper 410, example 7.13", Fluids, "the friction factor, which the book reads from its chart");

    public static readonly Source CraneFitting = Source.Of(
        Transcribed, "Crane Co., Flow of Fluids, Technical Paper 410 (2013), appendix A: 30 f_T with f_T 0.024 for 20 mm", Fluids, "the formula for f_T");

    public static readonly Source White67 = Source.Of(
        Recalled, "F. M. White, Fluid Mechanics, example 6.7", "from memory", "the friction factor, which the book reads from its chart");

    // ---- Pumps
    public static readonly Source CengelPump = Source.Of(
        WorkedApart,
        "Y. A. Çengel and J. M. Cimbala, Fluid Mechanics, problem on a pump of 7.46 − 0.0453 V² m and a system of 3.52 + 0.0261 V² m (V in L/min)",
        "problem transcribed on a public question page (shinyhistory.com); answer in closed form in the test",
        "curves, circuits and solver");

    public static readonly Source Munson = Source.Of(
        Recalled, "B. R. Munson, D. F. Young and T. H. Okiishi, Fundamentals of Fluid Mechanics, example 12.4 (answers 1,600 gal/min, 66.5 ft, read off a plot)", "from memory", "curves and solver");


    // ---- Statistics
    public static readonly Source Ishigami = Source.Of(
        WorkedApart,
        "T. Ishigami and T. Homma (1990), test function with a 7, b 0.1",
        "function recalled; mean and variance integrated in closed form",
        "sampling and estimators");

    public static readonly Source AstmMnl7 = Source.Of(
        Recalled, "ASTM MNL 7, Presentation of Data and Control Chart Analysis, d2 for 4", "from memory", "sampling");

    // ---- Regression
    public static readonly Source NistNorris = Nist("Norris");

    public static readonly Source NistPontius = Nist("Pontius");

    public static readonly Source NistNoInt1 = Nist("NoInt1");

    public static readonly Source NistWampler1 = Nist("Wampler1");

    /// <summary>Every row.</summary>
    public static IReadOnlyList<(string Name, Source Source)> All { get; } =
    [
        .. typeof(Works).GetFields(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static)
            .Select(field => (field.Name, Source: (Source)field.GetValue(null)!)),
    ];

    private static Source Nist(string set) => Source.Of(
        Read,
        $"NIST Statistical Reference Datasets, linear regression, {set}: certified values",
        "read in the certified file as the library Math.NET Numerics keeps it; refitted in exact fractions, they agree within 5e-15",
        "nothing: the fit knows no data");
}
