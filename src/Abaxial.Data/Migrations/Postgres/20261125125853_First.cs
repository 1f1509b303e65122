using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Abaxial.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "chains",
                columns: table => new
                {
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<long>(type: "bigint", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_chains", x => x.Device);
                });

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    Row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<long>(type: "bigint", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Received = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.Row);
                });

            migrationBuilder.CreateTable(
                name: "erasures",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_erasures", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "numbers",
                columns: table => new
                {
                    Number = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Year = table.Column<int>(type: "integer", nullable: false),
                    Running = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_numbers", x => new { x.Number, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "photographs",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    Received = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photographs", x => x.Sha256);
                });

            migrationBuilder.CreateTable(
                name: "sealed_texts",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Salt = table.Column<byte[]>(type: "bytea", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sealed_texts", x => x.Sha256);
                });

            migrationBuilder.CreateTable(
                name: "store",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_store", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_entries_Device_Place",
                table: "entries",
                columns: new[] { "Device", "Place" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_Id",
                table: "entries",
                column: "Id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_Sample",
                table: "entries",
                column: "Sample");

            migrationBuilder.CreateIndex(
                name: "IX_numbers_Sample",
                table: "numbers",
                column: "Sample");

            migrationBuilder.CreateIndex(
                name: "IX_numbers_Year_Running",
                table: "numbers",
                columns: new[] { "Year", "Running" });

            migrationBuilder.CreateIndex(
                name: "IX_sealed_texts_Person",
                table: "sealed_texts",
                column: "Person");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "chains");

            migrationBuilder.DropTable(
                name: "entries");

            migrationBuilder.DropTable(
                name: "erasures");

            migrationBuilder.DropTable(
                name: "numbers");

            migrationBuilder.DropTable(
                name: "photographs");

            migrationBuilder.DropTable(
                name: "sealed_texts");

            migrationBuilder.DropTable(
                name: "store");
        }
    }
}
