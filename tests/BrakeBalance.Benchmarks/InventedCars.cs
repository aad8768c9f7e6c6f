using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Benchmarks;

/// <summary>The invented cars of the repository, found from where the benchmark runs.</summary>
internal static class InventedCars
{
    public static Vehicle Coupe() => VehicleFile.Load(Find("coupe-1960s.json")).Vehicle;

    private static string Find(string file)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string path = Path.Combine(folder.FullName, "data", "vehicles", file);
            if (File.Exists(path))
            {
                return path;
            }
        }

        throw new FileNotFoundException("The benchmarks run inside the repository, which holds data/vehicles/" + file + ".");
    }
}
