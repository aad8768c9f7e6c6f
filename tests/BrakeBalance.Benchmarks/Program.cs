System.Console.WriteLine("");
