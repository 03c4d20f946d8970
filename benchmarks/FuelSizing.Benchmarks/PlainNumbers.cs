namespace FuelSizing.Benchmarks;

/// <summary>What a solved point says in numbers, as <see cref="PlainPoint"/> works it out.</summary>
internal record struct PlainNumbers
{
    public double Density;
    public double Manifold;
    public double Ratio;
    public double Outlet;
    public double Charge;
    public double Air;
    public double Drive;
    public double Brake;
    public double FromPower;
    public double FromAir;
    public double Injected;
    public double Set;
    public double Delivered;
    public double Returned;
    public double Across;
    public double StaticFlow;
    public double Time;
    public double DeadTime;
    public double Pulse;
    public double Duty;
    public double Capacity;
}
