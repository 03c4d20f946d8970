namespace FuelSizing.Engines;

/// <summary>Whether something already makes up for thin or warm air, so that a correction would count it twice.</summary>
public enum BoostControl
{
    /// <summary>Nothing does: no boost, or boost that falls with the barometer (a gauge spring, a belt-driven blower).</summary>
    FollowsAir,

    /// <summary>A controller holds absolute manifold pressure, or charge, whatever the air outside.</summary>
    CompensatesForAmbient,
}
