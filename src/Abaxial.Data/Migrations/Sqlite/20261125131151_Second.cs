using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Abaxial.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Second : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "Height",
                table: "photographs",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MediaType",
                table: "photographs",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Width",
                table: "photographs",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "photograph_uses",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photograph_uses", x => new { x.Sha256, x.Sample });
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "photograph_uses");

            migrationBuilder.DropColumn(
                name: "Height",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "MediaType",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "Width",
                table: "photographs");
        }
    }
}
